/** Runs before anything is painted: puts a theme on the page that was chosen against the device's own. */
import { mirroredTheme } from "./data/theme-mirror.js";

const theme = mirroredTheme();
if (theme !== "device") document.documentElement.dataset["theme"] = theme;
