// The walks that were left, on the home page.
(function () {
  "use strict";

  const parts = document.getElementById("pc-unfinished-parts");
  if (!parts) return;
  const { records } = window.pullcord;
  const bare = (address) => address.replace(/[?#].*$/, "").replace(/index\.html$/, "");
  // All files of a tablet may share one storage: what is not of this site is passed over.
  const isOurs = (kept) =>
    /^[\w./-]+\.html$/.test(kept.page) && bare(String(kept.home)) === bare(location.href);
  const left = records.all().filter(isOurs);
  if (!left.length) return;
  const when = (kept) => records.last(kept.record).left;
  left.sort((one, other) => when(other).localeCompare(when(one)));
  const section = parts.content.cloneNode(true).firstElementChild;
  const list = section.querySelector(".pc-ways");
  const pattern = list.firstElementChild;
  list.replaceChildren(...left.map((kept) => {
    const link = pattern.cloneNode(true);
    link.href = kept.page;
    link.querySelector(".pc-way__said").textContent = kept.title;
    link.querySelector(".pc-way__to").textContent = kept.says;
    return link;
  }));
  document.querySelector(".pc-page--home > p").after(section);
})();
