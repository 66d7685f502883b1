/** What is not needed to row: one file of its own, imported once the first screen stands. */
import "./athlete-home.js";
import "./block-list.js";
import "./finding-list.js";
import "./plan-downloads.js";
import "./plan-file-entry.js";
import "./plan-finder.js";
import "./prompter-home.js";
import "./readiness-view.js";
import "./result-entry.js";
import "./session-making.js";
import "./settings-home.js";
import "./stroke-figure.js";
import "./tag-entry.js";
import "./technique-page.js";
import "./wall-home.js";
import "./write-home.js";
