/** What every screen that leads a room does with the player: opens a plan, starts it, goes on by itself, hands on what is pressed. */
import { html, type LitElement, type ReactiveController } from "lit";
import { openPlan, type PlanRecord, type Source } from "../data/plans.js";
import { isSound, openSession, type LedBy, type SessionRecord } from "../data/sessions.js";
import { faultWords } from "../data/sound-session.js";
import type { Timeline } from "../plan/wire.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { enterFullScreen } from "./full-screen.js";
import { Painting } from "./next-paint.js";
import "./open-session-question.js";
import type { OpenSessionQuestion } from "./open-session-question.js";
import { troubleWords } from "./plan-opened.js";
import { goTo, replaceAddress } from "./routes.js";
import { extendedWords, noticeWords } from "./row-words.js";
import { RowingControl } from "./rowing-control.js";
import { keptLater, watchSaved, type Saved } from "./saving.js";

/** A plan by its place on this device. */
export interface PlanName {
  source: Source;
  name: string;
}

/** What is a screen's own. */
export interface Leads {
  led_by: LedBy;
  /** What of a plan is run: nothing in it waits. */
  timelineOf(record: PlanRecord): Timeline;
  /** The screen that leads, where it is shown. */
  screen(): { skip(): void; askEnd(): void } | null;
  /** Shows what is so now; the answer says in how many seconds it is to be called again. */
  paint(): number;
  /** The address of what runs; undefined to stay at the one there is. */
  address(): string | undefined;
}

const NOTICE_MS = 8000;
const MINUTE_MS = 60_000;
const ASK_AGAIN_MS = 1000;

export class Leading implements ReactiveController {
  record: PlanRecord | undefined;
  saved: Saved = "saving";
  starting = false;
  trouble = "";
  /** Something to say once, or "". */
  remark = "";
  /** The session that is open on this device, if any. */
  open: SessionRecord | undefined;
  private stop = (): void => {};
  private readonly painting: Painting;
  private told = 0;
  /** Null for now. */
  private start_at_ms: number | null = null;
  private silence: ReturnType<typeof setTimeout> | undefined;
  private readonly control: RowingControl;
  private readonly stayAwake = () => player.stayAwake();

  constructor(
    private readonly host: LitElement,
    private readonly leads: Leads,
  ) {
    this.control = new RowingControl(host, {
      hold: () => this.holdOrGoOn(), back: () => player.back(), skip: () => leads.screen()?.skip(), next: () => leads.screen()?.skip(),
      minute: () => this.extend(), check: () => undefined, end: () => leads.screen()?.askEnd(),
    });
    this.painting = new Painting(() => leads.paint());
    host.addController(this);
  }

  hostConnected(): void {
    this.told = player.snapshot().notice?.number ?? 0;
    const leave = player.subscribe((snapshot) => this.follow(snapshot));
    const awake = setInterval(this.stayAwake, MINUTE_MS);
    document.addEventListener("fullscreenchange", this.stayAwake);
    this.stop = () => {
      leave();
      clearInterval(awake);
      clearTimeout(this.silence);
      document.removeEventListener("fullscreenchange", this.stayAwake);
      this.painting.stop();
    };
    this.painting.start();
  }

  hostDisconnected(): void {
    this.stop();
  }

  /** What storage holds of the session that is open; while it does not answer, nobody may think that there is nothing. */
  async lookForOpen(): Promise<void> {
    while (this.host.isConnected) {
      try {
        const stored = await openSession();
        this.open = stored && isSound(stored) ? stored.record : undefined;
        if (stored && !isSound(stored)) this.trouble = `A session that was left open here cannot be gone on with. ${faultWords(stored.fault)}`;
        return;
      } catch {
        await new Promise((done) => setTimeout(done, ASK_AGAIN_MS));
      }
    }
  }

  /** Whether the open session is the one that is asked for, or none is asked for. */
  isOpen(asked: PlanName | undefined): boolean {
    return this.open !== undefined && (!asked || this.open.plan_id === `${asked.source}:${asked.name}`);
  }

  /** Opens a plan to be started here; `address` is that of the screen's own script. */
  async show({ source, name }: PlanName, address: string): Promise<void> {
    try {
      this.record = await openPlan(source, name);
    } catch (error) {
      this.trouble = troubleWords(error);
    }
    this.host.requestUpdate();
    if (this.record) await watchSaved(this.record.id, (saved) => this.take({ saved }), () => !this.host.isConnected, () => keptLater(address));
  }

  /** In a tap: the whole screen, the sound and the screen's staying on are given only then. */
  async start(at_ms: number | null): Promise<void> {
    this.start_at_ms = at_ms;
    if (this.open) return this.host.renderRoot.querySelector<OpenSessionQuestion>("open-session-question")!.ask(this.open.plan.title);
    enterFullScreen();
    this.control.takeMediaKeys();
    await this.begin();
  }

  /** Without anybody here: this plan, started at that moment (ms since 1970), or waiting. What led the room until now is ended. */
  async lead(record: PlanRecord | undefined, starts_at_ms: number | null): Promise<void> {
    await this.lookForOpen();
    if (this.open && !this.open.led_by) return this.take({ trouble: "A session that somebody rows is open on this device: end it first." });
    if (this.open) await player.restore();
    if (player.snapshot().phase === "elsewhere") return;
    if (player.snapshot().phase !== "none") await player.endForAnother();
    [this.open, this.record, this.start_at_ms] = [undefined, record, starts_at_ms];
    this.take({ trouble: "" });
    if (record && starts_at_ms !== null) await this.begin();
  }

  question() {
    return html`<open-session-question instead="End it, and show this one" @back=${() => goTo(this.host, `/${this.open?.led_by ?? "row"}`)}
      @instead=${() => void this.startInstead()}></open-session-question>`;
  }

  readonly holdOrGoOn = (): void => {
    if (player.snapshot().phase === "held") player.goOn();
    else player.hold();
  };

  changeSound(): void {
    void player.setSound(player.snapshot().sound === "off");
  }

  /** Any touch brings back the sound that was lost. */
  wake(): void {
    if (player.snapshot().sound === "lost") void player.wakeSound();
  }

  /** Leaves what has ended. */
  leave(): void {
    player.close();
    this.open = undefined;
  }

  private async startInstead(): Promise<void> {
    enterFullScreen();
    await player.restore();
    if (player.snapshot().phase === "elsewhere") return;
    await player.endForAnother();
    await this.begin();
  }

  private async begin(): Promise<void> {
    const { record, start_at_ms, leads } = this;
    const { led_by } = leads;
    this.take({ starting: true });
    try {
      await player.start(record!, leads.timelineOf(record!), { led_by, ...(start_at_ms === null ? {} : { starts_at_ms: start_at_ms }) });
    } finally {
      this.take({ starting: false });
    }
    const address = leads.address();
    if (address) replaceAddress(address);
  }

  private extend(): void {
    if (player.extend()) this.say(extendedWords(player.snapshot().segment!));
  }

  private follow(snapshot: Snapshot): void {
    this.host.requestUpdate();
    const { notice } = snapshot;
    if (!notice || notice.number === this.told || !snapshot.led_by) return;
    this.told = notice.number;
    this.say(noticeWords(notice));
  }

  private say(remark: string): void {
    clearTimeout(this.silence);
    this.take({ remark });
    this.silence = setTimeout(() => this.take({ remark: "" }), NOTICE_MS);
  }

  take(changes: Partial<Pick<Leading, "saved" | "starting" | "remark" | "trouble">>): void {
    Object.assign(this, changes);
    this.host.requestUpdate();
  }
}
