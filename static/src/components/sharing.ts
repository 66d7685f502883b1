/** Opening links and making them: one file of its own, imported when there is a link to open or a plan to share. */
import "./link-opened.js";
import "./share-plan.js";
