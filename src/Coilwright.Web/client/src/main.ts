import { afterwards } from './afterwards';
import { forgetDrafts, keepDrafts } from './drafts';
import { coilEntry } from './entry';
import { happeningKeys, happenings } from './happening';
import { liveForecast, slider } from './live';
import { drawPlots } from './plot';
import { soundSwitch } from './sound';
import { tellings } from './told';
import { understandings } from './understood';

document.documentElement.classList.add('scripted');

for (const confirmed of document.querySelectorAll<HTMLElement>('[data-confirmed]')) {
  forgetDrafts(confirmed.dataset.confirmed ?? '');
}
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-drafts]')) {
  keepDrafts(form);
}
for (const range of document.querySelectorAll<HTMLInputElement>('input[type=range][data-drives]')) {
  slider(range);
}
const forecast = document.getElementById('forecast');
const recipe = document.querySelector<HTMLFormElement>('form[data-live]');
if (recipe && forecast) {
  liveForecast(recipe, forecast, drawPlots);
  const after = document.querySelector<HTMLElement>('[data-after]');
  if (after) {
    afterwards(recipe, after);
  }
}
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-entry]')) {
  coilEntry(form);
}
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-happening]')) {
  happeningKeys(form);
}
for (const list of document.querySelectorAll<HTMLElement>('[data-happenings]')) {
  happenings(list);
}
tellings();
understandings();
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-sound]')) {
  soundSwitch(button);
}
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-print]')) {
  button.addEventListener('click', () => window.print());
}
drawPlots(document);
