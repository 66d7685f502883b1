/** What goes between devices: one file of its own, imported when there is a link to open, a plan to share, a wall to lead. */
import "./link-opened.js";
import "./share-plan.js";
import "./wall-afar.js";
import "./walls-page.js";
