// Stands in for the theme's search worker, whose file name is this one's query: reading the index costs half a second of
// a processor, and most visits search for nothing. It says at once that it is ready, keeps the index, and starts the
// theme's worker at the first question that has a word in it.
const SETUP = 0;
const READY = 1;

let index = null; // the message with which the theme hands over the index
let search = null; // the theme's worker
let waiting = []; // questions asked before that worker had read the index

self.onmessage = ({ data }) => {
  if (data.type === SETUP) {
    index = data;
    postMessage({ type: READY });
  } else if (!search && data.data.trim() === "") {
    return; // the theme asks for nothing as soon as it hears that the search is ready
  } else if (waiting) {
    waiting.push(data);
    search ??= begin();
  } else {
    search.postMessage(data);
  }
};

function begin() {
  const worker = new Worker(new URL(`../javascripts/workers/${self.location.search.slice(1)}`, self.location.href));
  worker.onmessage = ({ data }) => {
    if (data.type !== READY) {
      postMessage(data);
      return;
    }
    for (const question of waiting) worker.postMessage(question);
    waiting = null;
  };
  worker.postMessage(index);
  return worker;
}
