/** What every page wants: parts that come later, workings over the page, steps through charts, drafts, offline. */
import "./await-answers.ts";
import "./chart-steps.ts";
import "./drafts.ts";
import "./focus-first.ts";
import "./offline.ts";
import "./outbox.ts";
import "./working-over.ts";
