// What the modules of the board hand to one another. Only types: nothing here runs, and nothing imports it in a page.

/**
 * Columns of one track: times in hundredths of a second, then centimetres of the house frame, or degrees.
 * @typedef {number[][]} Track
 */

/**
 * All tracks: players p, defenders x, their headings f, the ball b; `end` in hundredths of a second.
 * @typedef {object} Tracks
 * @property {number} end
 * @property {Record<string, Track>} p
 * @property {Record<string, Track>} x
 * @property {Record<string, Track>} f
 * @property {Track} b
 */

/**
 * Who has the ball, from when to when (hundredths of a second), and where on his ring it sits (cm).
 * @typedef {[player: number, from: number, to: number, dx: number, dy: number]} Stretch
 */

/**
 * Where everybody is at one time, in centimetres; a defender's heading in degrees.
 * @typedef {object} Pose
 * @property {Record<string, number[]>} players
 * @property {Record<string, number[]>} defenders
 * @property {Record<string, number[]>} facing
 * @property {number[]} ball
 * @property {Stretch | null} held
 */

/**
 * A place of the floor that can be walked to: a spot, or whoever is off the spots. `label` says it in words.
 * @typedef {object} Cell
 * @property {string} id
 * @property {number} x
 * @property {number} y
 * @property {string} label
 * @property {number | null} player
 * @property {boolean} ball
 */

/**
 * A move that is allowed at a moment, made by Python. `key` is the letter, or "Enter", that does it from its cell.
 * @typedef {object} Can
 * @property {string} move
 * @property {string} words
 * @property {string} kind
 * @property {number} player
 * @property {number | null} to
 * @property {string | null} spot
 * @property {string} key
 */

/**
 * One decision: its drawing and every word that changes with it. The last three stand on the live page only.
 * @typedef {object} Moment
 * @property {number} t hundredths of a second
 * @property {string} under
 * @property {string} over
 * @property {string} caption
 * @property {number} words
 * @property {string} now
 * @property {string} floor
 * @property {Record<string, [state: "won" | "work" | "rest", remarks: string]>} book
 * @property {Record<string, string>} plates
 * @property {number[]} free
 * @property {number[]} lit
 * @property {Cell[]} [cells]
 * @property {Can[]} [can]
 * @property {number} [step]
 */

/**
 * The whole story that the page carries.
 * @typedef {object} Story
 * @property {Tracks} tracks packed: each number is the step from the last
 * @property {Stretch[]} held
 * @property {string} word
 * @property {[start: number, sense: number]} turn
 * @property {Moment[]} moments
 */

/**
 * @typedef {"still" | "step" | "slow" | "game"} Speed
 */

/**
 * What the page is doing. `whole` shows the way of the whole possession instead of its last second and a half.
 * @typedef {object} Now
 * @property {number} t hundredths of a second
 * @property {number} moment
 * @property {boolean} playing
 * @property {Speed} speed
 * @property {boolean} whole
 */

/**
 * @typedef {object} State
 * @property {Now} now
 * @property {number[]} times
 * @property {number} end
 * @property {(patch: Partial<Now>) => void} set
 * @property {(listener: (now: Now, before: Now) => void) => void} listen
 * @property {(t: number, patch?: Partial<Now>) => void} goTime
 * @property {(index: number, patch?: Partial<Now>) => void} goMoment
 */

/**
 * @typedef {object} Player
 * @property {() => void} play
 * @property {() => void} toggle
 */

/**
 * @typedef {object} Box
 * @property {number} left
 * @property {number} top
 * @property {number} right
 * @property {number} bottom
 */

/**
 * A line of running and points along it.
 * @typedef {object} Run
 * @property {SVGPathElement} path
 * @property {string} runner
 * @property {DOMPoint[]} points
 */

/**
 * The measures of the strip in pixels; `second` is the width of one second.
 * @typedef {object} Size
 * @property {number} room
 * @property {number} second
 * @property {number} most
 * @property {number} shift
 */

/**
 * The parts of the page that the board moves. `now` is null where the page has its own list of everybody.
 * @typedef {object} Parts
 * @property {SVGSVGElement} svg
 * @property {HTMLElement} court
 * @property {HTMLElement} before
 * @property {HTMLElement} play
 * @property {HTMLElement} playWord
 * @property {HTMLElement} next
 * @property {HTMLElement} count
 * @property {HTMLElement} slider
 * @property {HTMLElement} reel
 * @property {HTMLElement} past
 * @property {HTMLElement} pin
 * @property {HTMLElement} pen
 * @property {HTMLElement} playhead
 * @property {HTMLElement} caption
 * @property {HTMLElement | null} now
 * @property {SVGGElement} under
 * @property {SVGGElement} over
 * @property {SVGGElement} trails
 * @property {SVGGElement} ball
 * @property {Element} floorSaid
 * @property {Record<string, SVGGElement>} players
 * @property {Record<string, SVGGElement>} defenders
 * @property {Record<string, SVGGElement>} hands
 * @property {Record<string, SVGGElement>} glows
 * @property {HTMLElement[]} habits
 * @property {HTMLElement[]} said
 * @property {HTMLElement[]} links
 * @property {HTMLInputElement[]} speeds
 * @property {HTMLElement[]} placed
 * @property {Run[]} runs
 * @property {{ node: SVGGraphicsElement, box: Box }[]} words
 */

/**
 * What the board tells the live page, after a hand or a key; the board does nothing else. `can` gives what can be done
 * now, of all players, the plainest first; without it the list of the moment holds.
 * @template {Can} [C=Can]
 * @typedef {object} Live
 * @property {(player: number | null) => void} choose
 * @property {(can: C) => void} do
 * @property {() => C[]} [can]
 */

/**
 * Where the floor lies on the screen: its box in pixels, its drawing in cm (x, y, w, h), and whether it is turned.
 * @typedef {object} View
 * @property {number} left
 * @property {number} top
 * @property {number} width
 * @property {number} height
 * @property {number} x
 * @property {number} y
 * @property {number} w
 * @property {number} h
 * @property {boolean} turned
 */

/**
 * @typedef {[x: number, y: number]} Place centimetres of the house frame
 */

/**
 * Where a move can be dropped.
 * @typedef {object} Target
 * @property {Can} can
 * @property {Place} place
 */

/**
 * What a key or a tap comes to: a move, or another choice (null lets go).
 * @typedef {{ do: Can } | { choose: number | null }} Act
 */

/**
 * What is in hand on a live floor.
 * @typedef {object} Hand
 * @property {() => Cell[]} cells the cells of this moment, each where it is drawn now
 * @property {() => Can[]} cans
 * @property {() => number | null} chosen
 * @property {(act: Act) => void} act
 */

/**
 * A thing that is dragged over the floor, in cm. `limit` says where it may be; `move` is called on the way, `drop` when
 * it is let go or confirmed, each with a place inside the limit. `said` puts a place into words.
 * @typedef {object} Grip
 * @property {string} id
 * @property {string} label
 * @property {number} x
 * @property {number} y
 * @property {(x: number, y: number) => Place} limit
 * @property {(x: number, y: number) => void} move
 * @property {(x: number, y: number) => void} drop
 * @property {(x: number, y: number) => string} [said]
 */

/**
 * How a possession begins on the page; everything may be left out.
 * @typedef {object} Options
 * @property {AbortSignal} [signal] ends the board
 * @property {Story} [story] instead of the one in the page
 * @property {{ t?: number, moment?: number }} [at] where it opens; the decision tells apart those that share a time
 * @property {boolean} [playing] whether it goes on playing from there
 * @property {Speed} [speed]
 * @property {boolean} [calm] only stills, as for whoever asks the system for calm
 * @property {boolean} [whole] the way of the whole possession
 * @property {Live} [live] makes the floor one that can be played on
 * @property {boolean} [turned] the player's own end
 * @property {number | null} [you] whose view it is
 * @property {number | null} [chosen] who is chosen
 */

/**
 * @typedef {object} Board
 * @property {Parts} parts
 * @property {State} state
 * @property {Player} player
 * @property {Story} story
 * @property {Tracks} tracks unpacked
 * @property {AbortSignal} signal
 * @property {() => void} stop
 */

/**
 * How the live page looks at its board: who is chosen, from which end, whose view it is, and trails from the beginning.
 * @typedef {object} Looks
 * @property {(player: number | null) => void} choose
 * @property {(on: boolean) => void} turn
 * @property {(player: number | null) => void} you
 * @property {(whole: boolean) => void} trails
 */

/**
 * @typedef {Board & Looks} LiveBoard
 */

export {};
