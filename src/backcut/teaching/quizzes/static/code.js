// The result as a code: one number in letters and digits, built from the end, with two check characters. Python reads it.

const ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const PRIME = 1021;

/**
 * `digits` times `size` plus `part`; the digits are base 32, the smallest first.
 * @param {number[]} digits
 * @param {number} size
 * @param {number} part
 */
function grow(digits, size, part) {
  let carry = part;
  for (let i = 0; i < digits.length; i += 1) {
    const value = digits[i] * size + carry;
    digits[i] = value % 32;
    carry = Math.floor(value / 32);
  }
  while (carry > 0) {
    digits.push(carry % 32);
    carry = Math.floor(carry / 32);
  }
}

/**
 * @param {number} shirt
 * @param {number} book
 * @param {number[][]} counts right and asked of each sentence
 */
export function codeOf(shirt, book, counts) {
  const most = counts.reduce((largest, count) => Math.max(largest, count[1]), 0);
  /** @type {number[][]} */
  const parts = [[book, 1048576], [shirt, 100], [counts.length, 64], [most, 64]];
  counts.forEach((count) => parts.push([count[1], most + 1], [count[0], count[1] + 1]));
  /** @type {number[]} */
  const digits = [];
  parts.reverse().forEach((part) => grow(digits, part[1], part[0]));
  grow(digits, 2, 1);
  let left = 0;
  for (let i = digits.length - 1; i >= 0; i -= 1) left = (left * 32 + digits[i]) % PRIME;
  const all = digits.reverse().concat([Math.floor(left / 32), left % 32]);
  return all.map((digit, i) => (i && i % 4 === 0 ? "-" : "") + ALPHABET[digit]).join("");
}
