/** Edits of a plan document: the examples of RFC 6902, Appendix A, for the operations that mends use. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { PatchError, patched } from "../../static/src/plan/patch.js";
import type { Edit } from "../../static/src/plan/wire.js";

const EXAMPLES: [name: string, document: unknown, edit: Edit, after: unknown][] = [
  ["A.1 adding an object member", { foo: "bar" }, { op: "add", path: "/baz", value: "qux" }, { baz: "qux", foo: "bar" }],
  ["A.2 adding an array element", { foo: ["bar", "baz"] }, { op: "add", path: "/foo/1", value: "qux" }, { foo: ["bar", "qux", "baz"] }],
  ["A.3 removing an object member", { baz: "qux", foo: "bar" }, { op: "remove", path: "/baz" }, { foo: "bar" }],
  ["A.4 removing an array element", { foo: ["bar", "qux", "baz"] }, { op: "remove", path: "/foo/1" }, { foo: ["bar", "baz"] }],
  ["A.5 replacing a value", { baz: "qux", foo: "bar" }, { op: "replace", path: "/baz", value: "boo" }, { baz: "boo", foo: "bar" }],
  ["A.10 adding a nested member object", { foo: "bar" }, { op: "add", path: "/child", value: { grandchild: {} } }, { foo: "bar", child: { grandchild: {} } }],
  ["A.16 adding an array value", { foo: ["bar"] }, { op: "add", path: "/foo/-", value: ["abc", "def"] }, { foo: ["bar", ["abc", "def"]] }],
];

for (const [name, document, edit, after] of EXAMPLES) {
  test(`RFC 6902 ${name}`, () => assert.deepEqual(patched(document, [edit]), after));
}

test("RFC 6902 A.12 adding to a nonexistent target is an error", () => {
  assert.throws(() => patched({ foo: "bar" }, [{ op: "add", path: "/baz/bat", value: "qux" }]), PatchError);
});

test("RFC 6901, section 4: ~1 is read before ~0", () => {
  assert.deepEqual(patched({ "~1": 1, "/": 2 }, [{ op: "replace", path: "/~01", value: 3 }]), { "~1": 3, "/": 2 });
});

test("edits are applied in order, and what was given stays as it was", () => {
  const plan = { parts: [{ kind: "gap", for: { seconds: 120 } }] };
  const after = patched(plan, [
    { op: "replace", path: "/parts/0/for/seconds", value: 300 },
    { op: "add", path: "/parts/0", value: { kind: "warm-up", blocks: [] } },
  ]);
  assert.deepEqual(after, { parts: [{ kind: "warm-up", blocks: [] }, { kind: "gap", for: { seconds: 300 } }] });
  assert.equal(plan.parts[0]!.for.seconds, 120);
});

test("a place that is not there is refused: beyond a list, not a number, or nothing to replace or remove", () => {
  const edits: Edit[] = [
    { op: "add", path: "/list/3", value: 1 },
    { op: "replace", path: "/list/2", value: 1 },
    { op: "remove", path: "/list/-" },
    { op: "replace", path: "/list/01", value: 1 },
    { op: "replace", path: "/absent", value: 1 },
    { op: "remove", path: "/absent" },
    { op: "add", path: "no-slash", value: 1 },
    { op: "add", path: "/toString/x", value: 1 },
    { op: "remove", path: "" },
  ];
  for (const edit of edits) assert.throws(() => patched({ list: [0, 1] }, [edit]), PatchError, JSON.stringify(edit));
});

test("a member named like a part of every object is a member and nothing more", () => {
  const after = patched<object>({}, [{ op: "add", path: "/__proto__", value: { polluted: true } }]);
  assert.equal(Object.getPrototypeOf(after), Object.prototype);
  assert.equal("polluted" in {}, false);
});
