/**
 * What each cue sounds like, synthesised. Beside a noisy machine: short tones with a sharp attack, well apart in
 * pitch and none below 500 Hz, which a phone's speaker hardly gives (common practice [C]). Meaning is never in the
 * pitch alone: the last strokes are told by the number of pulses, a change by its length.
 */
import type { CueKind } from "../timeline/cue-window.js";

interface Pulse {
  after_s: number;
  hertz: number;
  length_s: number;
  /** From 0 to 1. */
  level: number;
}

const CATCH = { hertz: 880, length_s: 0.11, level: 1 };

const SOUNDS: Record<CueKind, readonly Pulse[]> = {
  catch: [{ after_s: 0, ...CATCH }],
  finish: [{ after_s: 0, hertz: 1320, length_s: 0.05, level: 0.4 }],
  between: [{ after_s: 0, hertz: 660, length_s: 0.04, level: 0.2 }],
  "second-last": [0, 0.15].map((after_s) => ({ after_s, ...CATCH })),
  last: [0, 0.15, 0.3].map((after_s) => ({ after_s, ...CATCH })),
  change: [
    { after_s: 0, hertz: 880, length_s: 0.12, level: 1 },
    { after_s: 0.12, hertz: 1760, length_s: 0.28, level: 1 },
  ],
  "count-in": [{ after_s: 0, hertz: 1760, length_s: 0.08, level: 0.7 }],
  end: [0, 0.3, 0.6].map((after_s) => ({ after_s, hertz: 1760, length_s: 0.25, level: 1 })),
};

const ATTACK_S = 0.004;
const SILENCE = 0.0001;

/** Puts a cue on the audio clock at `at_s` of the context; the answer holds what has to be stopped to take it back. */
export function schedule(kind: CueKind, at_s: number, bus: AudioNode): OscillatorNode[] {
  return SOUNDS[kind].map((pulse) => sound(pulse, at_s + pulse.after_s, bus));
}

function sound({ hertz, length_s, level }: Pulse, at_s: number, bus: AudioNode): OscillatorNode {
  const { context } = bus;
  const oscillator = new OscillatorNode(context, { type: "triangle", frequency: hertz });
  const envelope = new GainNode(context, { gain: 0 });
  envelope.gain.setValueAtTime(0, at_s);
  envelope.gain.linearRampToValueAtTime(level, at_s + ATTACK_S);
  envelope.gain.setValueAtTime(level, at_s + length_s / 2);
  envelope.gain.exponentialRampToValueAtTime(SILENCE, at_s + length_s);
  oscillator.connect(envelope).connect(bus);
  oscillator.start(at_s);
  oscillator.stop(at_s + length_s + 0.01);
  oscillator.onended = () => envelope.disconnect();
  return oscillator;
}

/** A tone nobody hears, kept running: browsers let their output rest in silence, and the audio clock then slips. */
export function keepAwake(bus: AudioNode): void {
  const oscillator = new OscillatorNode(bus.context, { frequency: 30 });
  oscillator.connect(new GainNode(bus.context, { gain: 0.001 })).connect(bus);
  oscillator.start();
}
