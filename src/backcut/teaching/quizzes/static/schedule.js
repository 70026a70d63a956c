// When a question comes back: the update rule of FSRS-6 with the library's own weights, which Python writes into the page.

/** @typedef {{ weights: number[], retention: number, longest: number }} Schedule */

const AGAIN = 1;
const GOOD = 3;
const EASY = 4;
const LEAST_STABILITY = 0.001;

/** @param {number} value */
function difficultyWithin(value) {
  return Math.min(Math.max(value, 1), 10);
}

/**
 * @param {number[]} w
 * @param {number} rating
 */
function firstDifficulty(w, rating) {
  return w[4] - Math.pow(Math.E, w[5] * (rating - 1)) + 1;
}

/**
 * @param {number[]} w
 * @param {number} difficulty
 * @param {number} rating
 */
function nextDifficulty(w, difficulty, rating) {
  const damped = difficulty + ((10 - difficulty) * -(w[6] * (rating - 3))) / 9;
  return difficultyWithin(w[7] * firstDifficulty(w, EASY) + (1 - w[7]) * damped);
}

/**
 * @param {number[]} w
 * @param {number} stability
 * @param {number} difficulty
 * @param {number} days
 * @param {number} rating
 */
function nextStability(w, stability, difficulty, days, rating) {
  if (days < 1) {
    const grows = Math.pow(Math.E, w[17] * (rating - 3 + w[18])) * Math.pow(stability, -w[19]);
    return Math.max(stability * (rating === AGAIN ? grows : Math.max(grows, 1)), LEAST_STABILITY);
  }
  const factor = Math.pow(0.9, 1 / -w[20]) - 1;
  const recalled = Math.pow(1 + (factor * days) / stability, -w[20]);
  if (rating === AGAIN) {
    const longer = w[11] * Math.pow(difficulty, -w[12]) * (Math.pow(stability + 1, w[13]) - 1) * Math.pow(Math.E, (1 - recalled) * w[14]);
    return Math.max(Math.min(longer, stability / Math.pow(Math.E, w[17] * w[18])), LEAST_STABILITY);
  }
  const gain = Math.pow(Math.E, w[8]) * (11 - difficulty) * Math.pow(stability, -w[9]) * (Math.pow(Math.E, (1 - recalled) * w[10]) - 1);
  return Math.max(stability * (1 + gain), LEAST_STABILITY);
}

/**
 * Days until a question of this stability comes back. Halves go to the even day, as the library rounds.
 * @param {Schedule} schedule
 * @param {number} stability
 */
function interval(schedule, stability) {
  const decay = -schedule.weights[20];
  const factor = Math.pow(0.9, 1 / decay) - 1;
  const exact = (stability / factor) * (Math.pow(schedule.retention, 1 / decay) - 1);
  const down = Math.floor(exact);
  const rounded = exact - down === 0.5 ? down + (down % 2) : Math.round(exact);
  return Math.min(Math.max(rounded, 1), schedule.longest);
}

/**
 * The card of a question after one more answer: stability, difficulty, the day, the day it is due, whether it was right.
 * @param {Schedule} schedule
 * @param {number[] | null} card
 * @param {boolean} right
 * @param {number} day
 * @returns {[number, number, number, number, number]}
 */
export function answeredCard(schedule, card, right, day) {
  const w = schedule.weights;
  const rating = right ? GOOD : AGAIN;
  const stability = card ? nextStability(w, card[0], card[1], Math.max(day - card[2], 0), rating) : Math.max(w[rating - 1], LEAST_STABILITY);
  const difficulty = card ? nextDifficulty(w, card[1], rating) : difficultyWithin(firstDifficulty(w, rating));
  return [stability, difficulty, day, day + interval(schedule, stability), right ? 1 : 0];
}

/** The number of today, counted in days of this place. */
export function today() {
  const now = new Date();
  return Math.floor(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000);
}
