/** Writing plans: a file of its own, imported when somebody writes; the page that stands alone does without. */
import "./write-home.js";
