/**
 * A change from one sound to another takes this long: short enough to compare, and no sample of 48,000 a second steps by more than a
 * thousandth of the sound (−60 dB), so that nothing clicks.
 */
const fadeS = 0.025;

/**
 * Sounds of one length that run in one clock, one of them heard at a time: a change of sound goes on at the same place of the note.
 */
export function listen(root: HTMLElement): void {
  const play = root.querySelector<HTMLButtonElement>('button[data-play]');
  const said = root.querySelector<HTMLElement>('[data-said]');
  const voices = [...root.querySelectorAll<HTMLButtonElement>('button[data-voice]')];
  if (!play || !said || voices.length === 0) {
    return;
  }
  const player = new Player(voices.map(voice => voice.dataset.wave ?? ''));
  let chosen = 0;
  const show = (): void => {
    voices.forEach((voice, at) => voice.setAttribute('aria-pressed', String(player.sounds && at === chosen)));
    play.textContent = player.sounds ? 'Stop' : 'Play';
    said.textContent = player.sounds ? `You hear ${voices[chosen]?.textContent?.trim() ?? ''}` : 'Nothing sounds.';
  };
  const hear = (at: number): void => {
    chosen = at;
    if (player.sounds) {
      player.turnTo(at);
      show();
      return;
    }
    said.textContent = 'The sounds are on their way.';
    player.start(() => chosen).then(show, () => (said.textContent = 'The sounds did not come. Load the page again.'));
  };
  const toggle = (): void => {
    if (player.sounds) {
      player.stop();
      show();
    } else {
      hear(chosen);
    }
  };
  play.addEventListener('click', toggle);
  voices.forEach((voice, at) => voice.addEventListener('click', () => hear(at)));
  document.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || isTyping(event.target)) {
      return;
    }
    const key = event.key.toUpperCase();
    const at = voices.findIndex(voice => voice.dataset.voice === key);
    if (key === 'P') {
      toggle();
    } else if (at >= 0) {
      hear(at);
    }
  });
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, select, textarea, [contenteditable]') !== null;
}

class Player {
  private audio: AudioContext | null = null;
  private buffers: Promise<AudioBuffer[]> | null = null;
  private playing: { source: AudioBufferSourceNode; gain: GainNode }[] = [];
  private starting = false;

  constructor(private readonly addresses: string[]) {}

  get sounds(): boolean {
    return this.playing.length > 0;
  }

  /** Begins all at one moment; the one that is chosen when they have come is heard. */
  async start(chosen: () => number): Promise<void> {
    if (this.starting) {
      return;
    }
    this.starting = true;
    try {
      this.audio ??= new AudioContext();
      const audio = this.audio;
      void audio.resume();
      this.buffers ??= Promise.all(this.addresses.map(address => fetched(audio, address)));
      this.begin(audio, await this.buffers, chosen());
    } catch (failure) {
      this.buffers = null;
      throw failure;
    } finally {
      this.starting = false;
    }
  }

  turnTo(place: number): void {
    this.playing.forEach(({ gain }, at) => this.fade(gain, at === place ? 1 : 0));
  }

  stop(): void {
    const end = (this.audio?.currentTime ?? 0) + 2 * fadeS;
    for (const { source, gain } of this.playing) {
      this.fade(gain, 0);
      source.stop(end);
    }
    this.playing = [];
  }

  private begin(audio: AudioContext, buffers: AudioBuffer[], place: number): void {
    const start = audio.currentTime + fadeS;
    this.playing = buffers.map(buffer => {
      const source = audio.createBufferSource();
      const gain = audio.createGain();
      source.buffer = buffer;
      source.loop = true;
      gain.gain.value = 0;
      source.connect(gain).connect(audio.destination);
      source.start(start);
      return { source, gain };
    });
    this.turnTo(place);
  }

  /** Sounds that differ little are in step: a straight fade from one to the other keeps their sum. */
  private fade(gain: GainNode, to: number): void {
    const now = this.audio?.currentTime ?? 0;
    gain.gain.cancelScheduledValues(now);
    gain.gain.setValueAtTime(gain.gain.value, now);
    gain.gain.linearRampToValueAtTime(to, now + fadeS);
  }
}

async function fetched(audio: AudioContext, address: string): Promise<AudioBuffer> {
  const answer = await fetch(address);
  if (!answer.ok) {
    throw new Error(`${address}: ${answer.status}`);
  }
  return audio.decodeAudioData(await answer.arrayBuffer());
}
