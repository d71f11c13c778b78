// Says on the page when the program cannot start. Browsers that are too old for the program must be able to read this:
// nothing here is newer than the arrow functions that the minifier makes. Functions are values of variables because the
// minifier puts declared ones in an order of chance, and two builds would differ.
(function () {
  var NEEDS = ' It needs JavaScript and WebAssembly: Chrome or Edge 104, Firefox 102 or Safari 16.4, or anything newer.';
  var root = document.documentElement;
  var started = false;
  var failed = false;
  var sentence = '';

  var show = function () {
    var place = document.getElementById('trouble');
    if (place) {
      place.textContent = sentence;
      root.classList.toggle('stuck', failed);
    }
  };

  var fail = function (reason) {
    if (!started && !failed) {
      failed = true;
      sentence = reason + NEEDS;
      show();
    }
  };

  var stopped = function () {
    fail('Hatwright could not start: a part of it did not load, or this browser cannot run it. Reload the page to try again.');
  };

  root.classList.add('scripted');
  addEventListener('TrunkApplicationStarted', function () {
    started = true;
    failed = false;
    sentence = '';
    show();
  });
  addEventListener('unhandledrejection', stopped);
  // A script that does not load reports to its own element, hence the capturing; a missing picture stops nothing.
  addEventListener('error', function (event) {
    if (event.target === window || event.target.tagName === 'SCRIPT') {
      stopped();
    }
  }, true);
  // What went wrong before the place for the sentence was there.
  document.addEventListener('DOMContentLoaded', show);
  addEventListener('load', function () {
    setTimeout(function () {
      if (!started && !failed) {
        sentence = 'Hatwright is still loading. If nothing changes, reload the page.' + NEEDS;
        show();
      }
    }, 20000);
  });

  if (location.protocol === 'file:') {
    fail('Hatwright cannot run from a file: open it through a web server.');
  } else if (!('noModule' in document.createElement('script')) || typeof WebAssembly !== 'object') {
    fail('This browser is too old for Hatwright.');
  }
})();
