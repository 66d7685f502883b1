/** What the plan screen shows besides what is needed to row: imported when it is first shown. */
import "./readiness-view.js";
import "./result-entry.js";
