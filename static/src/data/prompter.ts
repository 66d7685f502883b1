/** How the coach's prompter is to be read: the step of its text size, and whether it stands behind a mirror. */
import * as v from "valibot";
import { keepSettings, readSettings } from "./settings.js";

export interface PrompterSettings {
  /** From 0, the smallest, to LARGEST. */
  size: number;
  mirrored: boolean;
}

export const LARGEST = 7;

const VERSION = 1;
const USUAL: PrompterSettings = { size: 3, mirrored: false };
const KEPT = v.object({
  version: v.literal(VERSION),
  size: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(LARGEST)),
  mirrored: v.boolean(),
});

/** What was chosen; the usual where nothing was, or it makes no sense. */
export async function readPrompter(): Promise<PrompterSettings> {
  return prompterFrom((await readSettings()).prompter);
}

/** Keeps what is chosen. Rejects when the device could not keep it. */
export async function keepPrompter(chosen: PrompterSettings): Promise<void> {
  await keepSettings({ prompter: { version: VERSION, ...chosen } });
}

export function prompterFrom(stored: unknown): PrompterSettings {
  if (!v.is(KEPT, stored)) return USUAL;
  const { size, mirrored } = stored;
  return { size, mirrored };
}
