"use strict";
// Links findings and leads, and steps through the call. Without it the page says all of this in words.
(() => {
  const each = (selector, act) => document.querySelectorAll(selector).forEach(act);
  const leadsOf = (finding) => finding.dataset.leads.split(" ").filter(Boolean);
  const found = document.querySelectorAll(".found");

  const pointAt = (names) => {
    each(".found .pointed-at", (one) => one.classList.remove("pointed-at"));
    for (const sheet of found) {
      for (const name of names) {
        sheet.querySelectorAll(`.${CSS.escape(name)}`).forEach((one) => one.classList.add("pointed-at"));
      }
    }
  };

  each(".findings .show", (button) => {
    const finding = button.closest(".finding");
    button.addEventListener("click", () => {
      const shown = button.getAttribute("aria-pressed") === "true";
      each(".findings .show", (other) => other.setAttribute("aria-pressed", "false"));
      button.setAttribute("aria-pressed", String(!shown));
      pointAt(shown ? [] : [finding.id, ...leadsOf(finding).map((number) => `lead-${number}`)]);
      if (!shown) document.getElementById("sheets").scrollIntoView();
    });
  });

  each(".found .lead", (lead) => {
    const number = [...lead.classList].find((name) => /^lead-\d+$/.test(name)).slice(5);
    lead.addEventListener("click", () => {
      const findings = [...document.querySelectorAll(".findings > .finding")].filter((one) => leadsOf(one).includes(number));
      each(".findings .pointed-at", (one) => one.classList.remove("pointed-at"));
      findings.forEach((one) => one.classList.add("pointed-at"));
      pointAt([`lead-${number}`]);
      if (findings.length) findings[0].scrollIntoView({ block: "center" });
    });
  });

  each(".larger", (button) => {
    button.addEventListener("click", () => {
      const large = button.closest(".sheet").classList.toggle("wide-one");
      button.setAttribute("aria-pressed", String(large));
    });
  });

  const moments = JSON.parse(document.getElementById("moments").textContent);
  const slider = document.getElementById("moment");
  const told = document.querySelectorAll(".moments .moment");
  const now = document.getElementById("now");
  const liveVolts = Number(document.getElementById("moments").dataset.live);

  const step = () => {
    const at = Number(slider.value);
    document.body.classList.add("stepping");
    slider.setAttribute("aria-valuetext", told[at].querySelector("h3").textContent);
    now.replaceChildren(...[...told[at].children].map((one) => one.cloneNode(true)));
    each(".found .lead.live", (lead) => lead.classList.remove("live"));
    for (const [number, volts] of Object.entries(moments[at].volts)) {
      if (volts > liveVolts) each(`.found .lead-${CSS.escape(number)}`, (lead) => lead.classList.add("live"));
    }
  };

  if (moments.length) {
    document.querySelector(".stepper").hidden = false;
    slider.addEventListener("input", step);
    document.getElementById("stop-stepping").addEventListener("click", () => {
      document.body.classList.remove("stepping");
      now.replaceChildren();
    });
  }
})();
