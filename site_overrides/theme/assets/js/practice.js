// A worksheet's first answers take ten times as long as its later ones, while the laws and Python itself are compiled as they
// are used. So each is worked out a few times for nobody, once who has been waiting for the calculator had time to type.
// Whatever the page asks goes first; it waits for one such turn at most.
const REST = 500; // milliseconds
const TURNS = 4; // of each worksheet: after them an answer takes about as long as it ever will
const ENOUGH = 1000; // milliseconds of practice, on a slow processor or where a year is run

export function practise(calculator, worksheets) {
  const turns = worksheets.flatMap((worksheet) => Array.from({ length: TURNS }, (_, turn) => ({ worksheet, turn })));
  let spent = 0;
  const next = () => {
    if (turns.length === 0 || spent > ENOUGH) return;
    let began = 0;
    const request = () => {
      began = performance.now();
      return { ask: "practise", ...turns.shift() };
    };
    const more = () => {
      spent += performance.now() - began;
      next();
    };
    calculator.want({ name: "practise", rank: () => Infinity, request, take: more, refuse: more });
  };
  setTimeout(next, REST);
}
