// A stand-in for workers on pages opened from a folder.
//
// Browsers start no worker from file://. Here the worker's script runs in a hidden frame of the
// page instead: slower to give way to the page, otherwise the same. The two ends talk over a
// message channel, so data is copied and answers come later, as with a real worker.
(function () {
  "use strict";

  if (location.protocol !== "file:") {
    return;
  }

  // A frame cannot load scripts while its own script waits, as a worker can. A worker's script
  // that is to run here must therefore await what importScripts gives back.
  function loadScript(inside, url) {
    return new Promise(function (resolve, reject) {
      const script = inside.document.createElement("script");
      script.src = url;
      script.onload = resolve;
      script.onerror = function () {
        reject(new Error("cannot load " + url));
      };
      inside.document.head.append(script);
    });
  }

  function importInto(inside, address) {
    return function (...urls) {
      return urls.reduce(function (before, url) {
        return before.then(function () {
          return loadScript(inside, new URL(url, address).href);
        });
      }, Promise.resolve());
    };
  }

  function hiddenFrame() {
    const frame = document.createElement("iframe");
    frame.hidden = true;
    frame.title = "Search";
    frame.setAttribute("aria-hidden", "true");
    frame.tabIndex = -1;
    return frame;
  }

  class FrameWorker extends EventTarget {
    #frame = hiddenFrame();
    #channel = new MessageChannel();

    constructor(url) {
      super();
      const address = new URL(url, document.baseURI).href;
      this.onmessage = null;
      this.onerror = null;
      this.#channel.port1.onmessage = (event) => this.#tell("message", { data: event.data });
      this.#frame.addEventListener("load", () => this.#start(address), { once: true });
      document.body.append(this.#frame);
    }

    postMessage(data) {
      this.#channel.port1.postMessage(data);
    }

    terminate() {
      this.#channel.port1.close();
      this.#channel.port2.close();
      this.#frame.remove();
    }

    #start(address) {
      const inside = this.#frame.contentWindow;
      const port = this.#channel.port2;
      inside.postMessage = (data) => port.postMessage(data);
      inside.importScripts = importInto(inside, address);
      // Messages sent before now have waited in the channel; setting the listener lets them out.
      const listen = () => {
        port.onmessage = (event) =>
          inside.dispatchEvent(new inside.MessageEvent("message", { data: event.data }));
      };
      loadScript(inside, address).then(listen, (error) =>
        this.#tell("error", { data: error.message })
      );
    }

    #tell(type, detail) {
      const event = new MessageEvent(type, detail);
      this.dispatchEvent(event);
      if (typeof this["on" + type] === "function") {
        this["on" + type](event);
      }
    }
  }

  window.Worker = FrameWorker;
  // The theme's search script looks for this name to find its language files from within a frame.
  window.IFrameWorker = FrameWorker;
})();
