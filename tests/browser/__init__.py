"""Tests in real browsers: Chromium, Firefox and WebKitGTK."""
