// Draws the charts that wait on window.theoryKitCharts, and those pushed later.
(function () {
  var waiting = window.theoryKitCharts || [];
  if (waiting.draws) {
    return;
  }

  var drawn = [];

  function lines(color) {
    return { gridcolor: color, linecolor: color, zerolinecolor: color, tickcolor: color, automargin: true };
  }

  // The page's own text colour on its own ground: the chart's own layout still goes before its template.
  function themed(element, template) {
    var ink = getComputedStyle(element).color;
    var faint = ink.replace(/^rgb\((.*)\)$/, "rgba($1, 0.2)");
    var layout = Object.assign({}, template && template.layout);
    var font = Object.assign({}, layout.font, { color: ink, family: getComputedStyle(element).fontFamily });
    Object.assign(layout, {
      paper_bgcolor: "rgba(0,0,0,0)",
      plot_bgcolor: "rgba(0,0,0,0)",
      font: font,
      modebar: { bgcolor: "rgba(0,0,0,0)", color: faint, activecolor: ink },
    });
    layout.xaxis = Object.assign({}, layout.xaxis, lines(faint));
    layout.yaxis = Object.assign({}, layout.yaxis, lines(faint));
    layout.polar = Object.assign({}, layout.polar, {
      bgcolor: "rgba(0,0,0,0)",
      angularaxis: lines(faint),
      radialaxis: lines(faint),
    });
    return Object.assign({}, template, { layout: layout });
  }

  // A chart may name colours of the page's style sheet: var(--name), or var(--name)/0.3 to let the ground through. What
  // they mean changes in the dark and on paper.
  function colored(element, part) {
    if (typeof part === "string") {
      var named = /^(var\(--[\w-]+\))(?:\/([\d.]+))?$/.exec(part);
      return named ? meaning(element, named[1], named[2] || 1) : part;
    }
    if (Array.isArray(part)) {
      return part.map(colored.bind(null, element));
    }
    if (!part || typeof part !== "object") {
      return part;
    }
    var copy = {};
    Object.keys(part).forEach(function (key) {
      copy[key] = colored(element, part[key]);
    });
    return copy;
  }

  function meaning(element, name, cover) {
    var probe = element.parentNode.appendChild(document.createElement("span"));
    probe.style.color = name;
    var color = getComputedStyle(probe).color;
    probe.remove();
    return color.replace(/^rgb\((.*)\)$/, "rgba($1, " + cover + ")");
  }

  // The figure as it looks on this page, now.
  function prepared(element, named) {
    var figure = colored(element, { data: named.data, layout: named.layout || {} });
    figure.layout.template = themed(element, figure.layout.template);
    if (!figure.layout.margin) {
      figure.layout.margin = { l: 48, r: 16, t: figure.layout.title ? 64 : 28, b: 48 };
    }
    return figure;
  }

  function show(plotly, element, named) {
    var figure = prepared(element, named);
    var config = Object.assign({ responsive: true, displaylogo: false }, named.config);
    element.replaceChildren();
    plotly.newPlot(element, figure.data, figure.layout, config).then(function () {
      drawn.push(function () {
        if (element.isConnected) {
          var now = prepared(element, named);
          plotly.react(element, now.data, now.layout);
          plotly.Plots.resize(element);
        }
      });
    });
  }

  // A notebook may run a script before its element is in the page.
  function draw(plotly, chart, triesLeft) {
    var element = document.getElementById(chart[0]);
    if (element) {
      show(plotly, element, chart[1]);
    } else if (triesLeft > 0) {
      setTimeout(draw, 50, plotly, chart, triesLeft - 1);
    }
  }

  function again() {
    drawn.forEach(function (restyle) {
      restyle();
    });
  }

  window.theoryKitCharts = {
    draws: true,
    push: function (chart) {
      Promise.resolve(window.theoryKitPlotly).then(function (plotly) {
        draw(plotly, chart, 200);
      });
    },
  };
  waiting.forEach(window.theoryKitCharts.push);
  ["(prefers-color-scheme: dark)", "print"].forEach(function (query) {
    matchMedia(query).addEventListener("change", again);
  });
})();
