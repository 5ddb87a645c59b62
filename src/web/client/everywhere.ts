/** What every page wants: parts that come later, workings over the page, drafts, offline. */
import "./await-answers.ts";
import "./drafts.ts";
import "./offline.ts";
import "./working-over.ts";
