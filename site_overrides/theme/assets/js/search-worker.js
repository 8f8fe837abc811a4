// Stands in for the theme's search worker, whose file name is this one's query: reading the index costs half a second of
// a processor, and most visits search for nothing. It says at once that it is ready, and at the first question that has a
// word in it fetches the index of all pages and starts the theme's worker: what the theme itself brings lists none. The
// small words of a question are left out, since the theme looks for every word that begins like them: "is" would find
// "island", and "do" would find "door".
const SETUP = 0;
const READY = 1;
const QUERY = 2;

const SMALL = new Set(
  (
    "a am an and are as at be but by can do does for from get go had has have how i if in is it its me my need no not of " +
    "on or our should so than that the their there they this to too up us was we what when where which who why will " +
    "with would you your"
  ).split(" "),
);

let setup = null; // the message with which the theme hands over its index
let search = null; // the theme's worker
let waiting = []; // questions asked before that worker had read the index

self.onmessage = ({ data }) => {
  if (data.type === QUERY) data.data = telling(data.data);
  if (data.type === SETUP) {
    setup = data;
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

/** The question without its small words, or as it is if there are no others. */
function telling(question) {
  const words = question.split(/\s+/).filter((word) => !SMALL.has(word.toLowerCase().replace(/\W/g, "")));
  return words.some((word) => /\w/.test(word)) ? words.join(" ") : question;
}

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
  handOver(worker);
  return worker;
}

async function handOver(worker) {
  const response = await fetch(new URL("../../search/every_page.json", self.location.href));
  worker.postMessage({ ...setup, data: { ...setup.data, ...(await response.json()) } });
}
