// The shapes of what Python writes into the page. Only types: nothing here runs.

/** @typedef {number[][]} Track times in hundredths of a second, then one list a column; packed, each is the step from the last */
/** @typedef {{ end: number, p: Object<string, Track>, x: Object<string, Track>, f: Object<string, Track>, b: Track }} Tracks */
/** @typedef {[number, number, string, boolean, string]} Cell x and y in cm, words, right, why */
/** @typedef {[string, string, string, boolean, string]} Option letter, words, sentence, right, why */
/**
 * @typedef {Object} Question
 * @property {string} id
 * @property {string} ask
 * @property {number} rank
 * @property {number | null} mark
 * @property {number} runner who is right to be looked at once it is answered
 * @property {boolean} you
 * @property {string} words
 * @property {string} told
 * @property {string} answer
 * @property {[string, string, string]} sentence
 * @property {string} floor
 * @property {string} under
 * @property {string} over
 * @property {[string, string]} answered
 * @property {[number, number, number]} times still, from, to
 * @property {Tracks} tracks
 * @property {number[][]} held player, from, to, and where on the ring the ball sits
 * @property {Object<string, string>} plates
 * @property {number[]} free
 * @property {number[] | null} deed
 * @property {Cell[]} cells
 * @property {Option[]} options
 */
/** @typedef {[number, number, number, number, number]} Card stability, difficulty, day of the last answer, day it is due, 1 if it was right */
/**
 * @typedef {Object} Quiz
 * @property {string} key
 * @property {number} book
 * @property {number | null} shirt
 * @property {[string, string][]} sentences letter and cue word
 * @property {{ weights: number[], retention: number, longest: number }} schedule
 * @property {[number, number]} turn the turn of a plate that heads up the floor, and how much it turns with each degree
 * @property {Object<string, string>} words
 * @property {Question[]} questions
 */

export const TYPES_ONLY = true;
