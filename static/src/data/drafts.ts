/** What is being written, kept on this device as it is typed. */
import { changeSettings, readSettings } from "./settings.js";

/** The text being written in place of a plan, or undefined where there is none; "" stands for a new plan. */
export async function draftOf(plan_id: string): Promise<string | undefined> {
  const { draft, drafts } = await readSettings();
  return plan_id ? drafts[plan_id] : draft || undefined;
}

/** Keeps a text as it is typed. */
export async function keepDraft(plan_id: string, text: string): Promise<void> {
  await changeSettings(plan_id ? ({ drafts }) => ({ drafts: { ...drafts, [plan_id]: text } }) : { draft: text });
}

/** The draft has become a plan, or its plan is gone. */
export async function dropDraft(plan_id: string): Promise<void> {
  await changeSettings(({ drafts }) => {
    if (!plan_id) return { draft: "" };
    const { [plan_id]: _gone, ...others } = drafts;
    return { drafts: others };
  });
}
