import { afterwards } from './afterwards';
import { clocks } from './clocks';
import { dimensions } from './dimensions';
import { forgetDrafts, keepDrafts } from './drafts';
import { responseCursor } from './cursor';
import { liveCount } from './count';
import { coilEntry } from './entry';
import { happeningKeys, happenings } from './happening';
import { leaving } from './leaving';
import { listen } from './listen';
import { liveForecast, slider } from './live';
import { partsDraft } from './parts';
import { revisionDraft } from './revision';
import { soundSwitch } from './sound';
import { tellings } from './told';
import { understandings } from './understood';
import { mendRefused, waitingCoils } from './waits';

document.documentElement.classList.add('scripted');

for (const confirmed of document.querySelectorAll<HTMLElement>('[data-confirmed]')) {
  forgetDrafts(confirmed.dataset.confirmed ?? '');
}
mendRefused();
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-drafts]')) {
  partsDraft(form);
  keepDrafts(form);
}
for (const range of document.querySelectorAll<HTMLInputElement>('input[type=range][data-drives]')) {
  slider(range);
}
const recipe = document.querySelector<HTMLFormElement>('form[data-live]');
const draftBar = document.getElementById('draft');
if (recipe && draftBar) {
  revisionDraft(recipe, draftBar);
}
if (recipe) {
  const dressed = (part: HTMLElement): void => {
    part.querySelectorAll<HTMLElement>('[data-cursor]').forEach(responseCursor);
    const after = part.querySelector<HTMLElement>('[data-after]');
    if (after) {
      afterwards(recipe, after);
    }
  };
  recipe.querySelectorAll<HTMLElement>('[data-part]').forEach(dressed);
  const light = dimensions(recipe);
  liveForecast(recipe, part => {
    dressed(part);
    light();
  });
}
const entry = document.querySelector<HTMLFormElement>('form[data-entry]');
const ownBox = entry ? coilEntry(entry) : null;
for (const place of document.querySelectorAll<HTMLElement>('[data-live-count]')) {
  void liveCount(place);
}
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-happening]')) {
  happeningKeys(form);
}
for (const list of document.querySelectorAll<HTMLElement>('[data-happenings]')) {
  happenings(list);
}
leaving();
tellings();
understandings();
waitingCoils(ownBox);
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-sound]')) {
  soundSwitch(button);
}
for (const root of document.querySelectorAll<HTMLElement>('[data-listen]')) {
  listen(root);
}
for (const root of document.querySelectorAll<HTMLElement>('[data-clocks]')) {
  clocks(root);
}
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-print]')) {
  button.addEventListener('click', () => window.print());
}
document.querySelectorAll<HTMLElement>('[data-cursor]').forEach(responseCursor);
