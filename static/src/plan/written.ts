/** A plan in canonical shorthand, exactly as planner/notation/writer.py writes it. `tests/shared/texts` holds both to it. */
import { splitClock } from "./format.js";
import type { Block, Call, Effort, Part, Plan, Repeat, Setting, Step } from "./wire.js";

const LONGEST_LINE = 100;
const INDENT = "  ";

/** The text of a plan, ending in a line break. */
export function written(plan: Plan): string {
  return `${[...header(plan), ...plan.parts.flatMap(partLines)].join("\n")}\n`;
}

/** One step on one line, without what stands below it: "3' r18 light". */
export function inline(step: Step): string {
  if ("times" in step) {
    const text = `${step.times} x ${item(step.blocks)}`;
    return step.between?.length ? `${text} / ${item(step.between)}` : text;
  }
  if ("rest" in step) return `${time(step.for.seconds)} rest`;
  const rate = step.rate === undefined ? "" : `r${step.rate}`;
  return [blockLength(step), rate, step.effort ? effortText(step.effort) : ""].filter(Boolean).join(" ");
}

function header({ title, summary, setup, setting }: Plan): string[] {
  return [
    `title: ${title}`,
    ...(summary ? [`summary: ${summary}`] : []),
    ...(setup ? [`set-up: ${setup}`] : []),
    ...(setting ? [`setting: ${settingText(setting)}`] : []),
  ];
}

function partLines(part: Part): string[] {
  if (part.kind === "gap") return ["", `gap ${time(part.for.seconds)}`];
  return ["", part.kind, ...part.blocks.flatMap(stepLines)];
}

function stepLines(step: Step): string[] {
  return "times" in step ? repeatLines(step) : [inline(step), ...indented(below(step))];
}

function repeatLines(repeat: Repeat): string[] {
  const { times, blocks } = repeat;
  const between = repeat.between ?? [];
  const one = blocks.length === 1 && isBlock(blocks[0]!);
  const line = inline(repeat);
  const hidden = hasBelow(between) || (!one && hasBelow(blocks));
  if (!hidden && line.length <= LONGEST_LINE) return [line, ...(one ? indented(below(blocks[0]!)) : [])];
  return [
    `${times} x (`,
    ...indented(blocks.flatMap(stepLines)),
    ...(between.length ? [") / (", ...indented(between.flatMap(stepLines))] : []),
    ")",
  ];
}

function isBlock(step: Step): step is Block {
  return !("times" in step) && !("rest" in step);
}

function hasBelow(steps: readonly Step[]): boolean {
  return steps.some((step) => ("times" in step ? hasBelow([...step.blocks, ...(step.between ?? [])]) : below(step).length > 0));
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => INDENT + line);
}

function item(steps: readonly Step[]): string {
  return steps.length === 1 && !("times" in steps[0]!) ? inline(steps[0]!) : `(${steps.map(inline).join(", ")})`;
}

function below(step: Step): string[] {
  if (!isBlock(step)) return [];
  return [
    ...(step.drill ? [`drill: ${step.drill.name}`] : []),
    ...(step.focus ? [`focus: ${step.focus}`] : []),
    ...(step.setting ? [`setting: ${settingText(step.setting)}`] : []),
    ...(step.calls ?? []).map(callText),
  ];
}

function callText({ text, stroke, strokes_left }: Call): string {
  if (stroke !== undefined) return `call at ${stroke}: ${text}`;
  return strokes_left === undefined ? `call: ${text}` : `call last ${strokes_left}: ${text}`;
}

function settingText(setting: Setting): string {
  return "lever" in setting ? `lever ${setting.lever}` : `drag factor ${setting.drag_factor}`;
}

function blockLength({ for: length, drill }: Block): string {
  if (drill?.sides !== undefined) {
    const pairs = drill.sides > 2 ? `${drill.sides / 2} x ` : "";
    const swap = drill.swap_seconds ? ` swap ${drill.swap_seconds}"` : "";
    return `each side ${pairs}${drill.side_seconds}"${swap}`;
  }
  if (!length) return "open";
  if ("seconds" in length) return time(length.seconds);
  if ("metres" in length) return `${length.metres}m`;
  return length.strokes === 1 ? "1 stroke" : `${length.strokes} strokes`;
}

function time(seconds: number): string {
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  return (minutes ? `${minutes}'` : "") + (rest || !minutes ? `${rest}"` : "");
}

function effortText(effort: Effort): string {
  if ("pressure" in effort) return effort.pressure;
  if ("split" in effort) return `@${splitClock(effort.split).replace(/\.0$/, "")}`;
  if ("split_offset" in effort) return effort.split_offset ? `2k${signed(effort.split_offset)}` : "2k";
  if ("change" in effort) return `${signed(effort.change)}"`;
  if ("two_k_power_fraction" in effort) return `${Math.round(effort.two_k_power_fraction * 100)}% power`;
  if ("cr10" in effort) return `effort ${effort.cr10}`;
  const { heart_rate } = effort;
  if ("bpm" in heart_rate) return `hr ${heart_rate.bpm}`;
  return "percent_max" in heart_rate ? `hr ${heart_rate.percent_max}% max` : `hr ${heart_rate.percent_reserve}% reserve`;
}

function signed(value: number): string {
  return `${value < 0 ? "-" : "+"}${Math.abs(Math.round(value * 10) / 10)}`;
}
