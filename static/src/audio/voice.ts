/**
 * A voice of the platform, one sentence at a time.
 *
 * Only voices that live on the device: others need a network, and some of them hang for good without it. `wake` is to
 * be called in a tap, since phones let a page speak only then.
 */

/** Voices may be told to a page late, or never. */
const VOICES_MS = 2000;
const LANGUAGE = "en";

/** The part of the platform's speech that is used here; tests hand in their own. */
export type Speech = Pick<SpeechSynthesis, "speak" | "cancel" | "getVoices" | "speaking" | "pending" | "addEventListener" | "removeEventListener">;

export class Voice {
  constructor(
    private readonly speech: Speech | undefined = globalThis.speechSynthesis,
    private readonly sentence: (text: string) => SpeechSynthesisUtterance = (text) => new SpeechSynthesisUtterance(text),
  ) {}

  /** The voices of the device that speak the app's language, once they are known; none where there is no speech. */
  async voices(): Promise<SpeechSynthesisVoice[]> {
    if (!this.speech) return [];
    if (!this.speech.getVoices().length) await this.told(this.speech);
    return usable(this.speech.getVoices());
  }

  /** In a tap, and unheard: lets the page speak from now on. */
  wake(): void {
    if (!this.speech || !usable(this.speech.getVoices()).length) return;
    const unheard = this.sentence(" ");
    unheard.volume = 0;
    this.speech.speak(unheard);
  }

  /** Says it, with the voice of this address or the first there is; false when nothing is said. */
  say(text: string, uri: string, volume: number): boolean {
    const voices = usable(this.speech?.getVoices() ?? []);
    const voice = voices.find(({ voiceURI }) => voiceURI === uri) ?? voices[0];
    if (!this.speech || !voice) return false;
    const said = this.sentence(text);
    Object.assign(said, { voice, lang: voice.lang, volume });
    this.speech.speak(said);
    return true;
  }

  get busy(): boolean {
    return this.speech !== undefined && (this.speech.speaking || this.speech.pending);
  }

  silence(): void {
    if (this.busy) this.speech!.cancel();
  }

  private told(speech: Speech): Promise<void> {
    return new Promise((done) => {
      const tell = () => {
        clearTimeout(timer);
        speech.removeEventListener("voiceschanged", tell);
        done();
      };
      const timer = setTimeout(tell, VOICES_MS);
      speech.addEventListener("voiceschanged", tell);
    });
  }
}

function usable(voices: readonly SpeechSynthesisVoice[]): SpeechSynthesisVoice[] {
  return voices.filter(({ localService, lang }) => localService && lang.toLowerCase().startsWith(LANGUAGE));
}
