/** The settings that go along in a file of everything: what was chosen here, and what is missing here of another device's. */
import type { Step } from "./shape.js";
import { chosenIn } from "./preferences.js";
import { prompterFrom } from "./prompter.js";
import { chosenSettings, isSetting, settingsStep, type Settings } from "./settings.js";
import { wallFrom } from "./wall.js";

/** Not the keys, which open what others share; and the cautions are shown once on each device. */
const CARRIED = ["sound", "volume", "warmup_minutes", "room", "preferences", "wall", "prompter", "draft", "drafts"] as const;
export type Carried = Partial<Pick<Settings, (typeof CARRIED)[number]>>;

type Fields = Readonly<Record<string, unknown>>;

/** As the composer has it, in characters. */
const LONGEST_DRAFT = 262_144;

/** What was chosen on this device. */
export async function carriedSettings(): Promise<Carried> {
  const chosen: Carried = await chosenSettings();
  const wall = chosen.wall === undefined ? {} : { wall: { version: 1, ...told(wallFrom(chosen.wall).wall) } };
  return Object.fromEntries(CARRIED.flatMap((name) => (chosen[name] === undefined ? [] : [[name, { ...chosen, ...wall }[name]]]))) as Carried;
}

/** The name of a setting that makes no sense, or "". */
export function settingsFault(settings: unknown): string {
  if (typeof settings !== "object" || settings === null || Array.isArray(settings)) return "settings";
  return Object.entries(settings).find(([name, value]) => !isSound(name, value))?.[0] ?? "";
}

function isSound(name: string, value: unknown): boolean {
  if (!(CARRIED as readonly string[]).includes(name) || !isSetting(name as keyof Settings, value)) return false;
  const fields = (value ?? {}) as Fields;
  if (name === "preferences") return fields["version"] === 1 && typeof fields["values"] === "object";
  if (name === "wall") return fields["version"] === 1 && wallFrom(value).lost === 0;
  if (name === "prompter") return JSON.stringify(prompterFrom(value)) === JSON.stringify({ size: fields["size"], mirrored: fields["mirrored"] });
  if (name === "draft") return (value as string).length <= LONGEST_DRAFT;
  return name !== "drafts" || Object.values(fields).every((text) => (text as string).length <= LONGEST_DRAFT);
}

/** What stores those settings that were never chosen here, and how many they are. */
export async function missingSettings(brought: Carried): Promise<{ steps: Step[]; changed: number }> {
  const here = await carriedSettings();
  const changes = Object.fromEntries(CARRIED.flatMap((name) => {
    const next = brought[name] === undefined ? undefined : joinedSetting(name, here[name], brought[name]);
    return next === undefined ? [] : [[name, next]];
  })) as Carried;
  const changed = Object.keys(changes).length;
  return { steps: changed ? [await settingsStep(changes)] : [], changed };
}

/** The setting with what it lacks; undefined where it lacks nothing. */
function joinedSetting(name: (typeof CARRIED)[number], here: unknown, brought: unknown): unknown {
  if (name === "drafts") return withMissing((here ?? {}) as Fields, brought as Fields);
  if (name === "preferences") {
    const values = withMissing(chosenIn(here) as Fields, chosenIn(brought) as Fields);
    return values && { version: 1, values };
  }
  if (name === "wall") {
    const wall = withMissing(told(wallFrom(here).wall), told(wallFrom(brought).wall));
    return wall && { version: 1, ...wall };
  }
  return here === undefined ? brought : undefined;
}

/** What is here, and of the other what is not; undefined where that is nothing. */
function withMissing(here: Fields, brought: Fields): Fields | undefined {
  const missing = Object.entries(brought).filter(([name]) => !Object.hasOwn(here, name));
  return missing.length ? { ...here, ...Object.fromEntries(missing) } : undefined;
}

/** Without what nobody has said. */
function told(wall: object): Fields {
  return Object.fromEntries(Object.entries(wall).filter(([, value]) => value !== null && !(Array.isArray(value) && !value.length)));
}
