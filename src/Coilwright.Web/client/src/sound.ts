import { read, write } from './store';

export type VerdictWord = 'pass' | 'hold' | 'reject';

const key = 'sound';
let context: AudioContext | null = null;

/** One tone for pass, two for hold, a low one for reject. */
export function sound(verdict: VerdictWord): void {
  if (!isOn()) {
    return;
  }
  try {
    context ??= new AudioContext();
    if (verdict === 'pass') {
      tone(context, 880, 0, 0.14);
    } else if (verdict === 'hold') {
      tone(context, 660, 0, 0.12);
      tone(context, 660, 0.2, 0.12);
    } else {
      tone(context, 165, 0, 0.4);
    }
  } catch {
    // No loudspeaker: the word, the shape and the colour still stand.
  }
}

/** Of several tones at once the gravest is heard; null for none. */
export function loudest(tones: VerdictWord[]): VerdictWord | null {
  return (['reject', 'hold', 'pass'] as const).find(tone => tones.includes(tone)) ?? null;
}

/**
 * A browser lets no page sound before somebody has touched it: until then a note says so. Once shown it keeps its room: what it says
 * ends with a touch, and nothing may move away under the finger that touches.
 */
export function soundNote(note: HTMLElement): void {
  try {
    context ??= new AudioContext();
  } catch {
    return; // no loudspeaker: there is nothing to wait for
  }
  const audio = context;
  const show = (): void => {
    const says = audio.state !== 'running' && isOn();
    note.hidden &&= !says;
    note.style.visibility = says ? 'visible' : 'hidden';
  };
  const touched = (): void => {
    void audio.resume().then(show);
  };
  audio.addEventListener('statechange', show);
  document.addEventListener('pointerdown', touched);
  document.addEventListener('keydown', touched);
  document.addEventListener('click', show);
  show();
}

export function soundSwitch(button: HTMLButtonElement): void {
  const show = (): void => {
    button.setAttribute('aria-pressed', String(isOn()));
    button.textContent = isOn() ? 'Sound on' : 'Sound off';
  };
  button.addEventListener('click', () => {
    write(key, isOn() ? 'off' : 'on');
    show();
  });
  show();
}

function isOn(): boolean {
  return read(key) !== 'off';
}

function tone(audio: AudioContext, frequencyHz: number, startS: number, lengthS: number): void {
  const source = audio.createOscillator();
  const loudness = audio.createGain();
  const start = audio.currentTime + startS;
  source.frequency.value = frequencyHz;
  loudness.gain.setValueAtTime(0.0001, start);
  loudness.gain.exponentialRampToValueAtTime(0.3, start + 0.01);
  loudness.gain.exponentialRampToValueAtTime(0.0001, start + lengthS);
  source.connect(loudness).connect(audio.destination);
  source.start(start);
  source.stop(start + lengthS);
}
