/** The whole screen for the page, where the browser allows it; to be called in a tap. */

export function enterFullScreen(): void {
  if (document.fullscreenEnabled && !document.fullscreenElement) {
    document.documentElement.requestFullscreen({ navigationUI: "hide" }).catch(() => undefined);
  }
}

export function changeFullScreen(): void {
  if (document.fullscreenElement) document.exitFullscreen().catch(() => undefined);
  else enterFullScreen();
}
