/** Changes of a text are taken back and made again, however many there were. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { History } from "../../static/src/plan/history.js";
import { chance } from "./builders.js";

test("ten thousand changes of every kind are all taken back and all made again", () => {
  const random = chance(7);
  const pick = (most: number) => Math.floor(random() * most);
  const texts = ["3' r18 light\n"];
  const history = new History(texts[0]!);
  for (let done = 0; done < 10_000; done += 1) {
    const text = texts.at(-1)!;
    const [from, more] = [pick(text.length + 1), ["", "5' r20\n", "aa", "🙂", "x"][pick(5)]!];
    const next = text.slice(0, from) + more + text.slice(from + pick(9));
    history.change(next);
    if (next !== text) texts.push(next);
  }
  for (const text of [...texts].reverse().slice(1)) {
    assert.notEqual(history.undo(), undefined);
    assert.equal(history.text, text);
  }
  assert.equal(history.canUndo, false);
  assert.equal(history.undo(), undefined);
  for (const text of texts.slice(1)) {
    history.redo();
    assert.equal(history.text, text);
  }
  assert.equal(history.canRedo, false);
});

test("keys of one breath are taken back together, a pause and the end of a line part them", () => {
  const history = new History("");
  let [text, at] = ["", 0];
  const type = (keys: string, pause = 100) => [...keys].forEach((key) => history.change((text += key), (at += pause)));
  type("3' r18\n");
  type("2'");
  at += 5000;
  type(" r20");
  const steps = [];
  while (history.canUndo) {
    history.undo();
    steps.push(history.text);
  }
  assert.deepEqual(steps, ["3' r18\n2'", "3' r18\n", ""]);
});

test("what is rubbed out in one breath comes back at once, and a mend stands alone", () => {
  const history = new History("5' r20 full");
  for (const [text, ms] of [["5' r20 ful", 1], ["5' r20 fu", 90], ["5' r20 f", 180]] as const) history.change(text, ms);
  history.change("5' r20 half");
  history.undo();
  assert.equal(history.text, "5' r20 f");
  assert.equal(history.undo(), "5' r20 full".length);
  assert.equal(history.text, "5' r20 full");
});

test("a change after taking back leaves nothing to make again", () => {
  const history = new History("a");
  history.change("ab");
  history.undo();
  history.change("ac");
  assert.equal(history.canRedo, false);
  assert.equal(history.redo(), undefined);
});
