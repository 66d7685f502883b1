/** What one does while a session runs, from hold to end: each command is written as a fact; one that means nothing at this point changes nothing. */
import { isRowed, type Segment } from "../plan/types.js";
import type { Chosen } from "./chosen.js";
import { Keeper, type Moment } from "./keeper.js";
import type { Reading } from "./session-clock.js";
import { Slips, type Pressed } from "./slips.js";

export abstract class Steering {
  protected readonly keeper: Keeper;
  private readonly slips = new Slips();

  constructor(
    protected readonly read: () => Reading,
    protected readonly chosen: Chosen,
  ) {
    this.keeper = new Keeper(read, chosen);
  }

  hold(): void {
    if (this.slipped("hold")) return;
    this.keeper.command(({ place, at_s }) => (place.phase === "held" ? null : { kind: "held", at_s }));
  }

  /** After a hold: counts in, then goes on from the catch of the stroke one was in. */
  goOn(): void {
    if (this.slipped("hold")) return;
    this.keeper.command(({ place, at_s, segment }) =>
      place.phase === "held" ? { kind: "went-on", at_s, count_in_s: this.countAfterHold(segment) } : null,
    );
  }

  /** To the start of this segment, or of the one before when this has only just begun. */
  back(): void {
    if (this.slipped("back")) return;
    this.keeper.command(({ at_s }) => ({ kind: "stepped-back", at_s }));
  }

  /** One more minute of this block, rest or gap, if it can have one; true when it has. */
  extend(): boolean {
    if (this.slipped("extend")) return true;
    const before = this.keeper.run?.timeline;
    this.keeper.command(({ at_s }) => ({ kind: "extended", at_s }));
    return this.keeper.run?.timeline !== before;
  }

  /** To the next segment; out of a gap with a count-in. */
  skip(): void {
    if (this.slipped("skip")) return;
    this.keeper.command((moment) => ({ kind: "skipped", at_s: moment.at_s, count_in_s: this.countAfter(moment) }));
  }

  /** A metre or open block is over, and was so some seconds ago; or the gap is: the piece starts with a count-in. */
  done(seconds_ago = 0): void {
    if (this.slipped("done")) return;
    this.keeper.command((moment) => ({ kind: "tapped", at_s: moment.at_s, ago_s: seconds_ago, count_in_s: this.countAfter(moment) }));
  }

  /** In a gap, or before a start that was set: starts what follows when the wall clock shows this moment, in ms since 1970; null takes that back. */
  startAtClock(wall_ms: number | null): void {
    this.keeper.command(({ at_s }) => {
      const start_s = wall_ms === null ? null : at_s + (wall_ms - this.keeper.run!.clock.last.wall_ms) / 1000;
      return { kind: "start-set", at_s, start_s };
    });
  }

  /** Starts what waits for a time that was set, after the count-in of any start, or at its time where that is sooner. */
  startSoon(): void {
    this.keeper.command(({ place: { start_s }, at_s }) => {
      return start_s === null ? null : { kind: "start-set", at_s, start_s: Math.min(start_s, at_s + this.chosen.now.start_count_s) };
    });
  }

  /** Ends the session here; what was rowed stays on the device. */
  end(): void {
    this.keeper.command(({ at_s }) => ({ kind: "ended", at_s }));
  }

  protected countAfterHold(segment: Segment | undefined): number {
    return countIn(segment, this.chosen.now.hold_count_s);
  }

  /** Seconds to count in to what follows: the count-in to a start by the clock that is on, or time to sit down. */
  private countAfter({ place, segment, next }: Moment): number {
    if (place.start_s !== null && place.count_in_s !== null) return place.count_in_s;
    return segment.kind === "gap" ? countIn(next, this.chosen.now.start_count_s) : 0;
  }

  private slipped(what: Pressed): boolean {
    return this.slips.isOne(what, this.read());
  }
}

/** Seconds to count in, where the handle is needed. */
export function countIn(segment: Segment | undefined, count_in_s: number): number {
  return segment && isRowed(segment) ? count_in_s : 0;
}
