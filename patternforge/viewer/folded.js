"use strict";
// Shows the wallet that the data of this page describe. The sums are those of the program that wrote it; here they
// are only carried out: where plates stand and how layers bend at any moment comes with the page.
(() => {
  const data = JSON.parse(document.getElementById("wallet").textContent);
  const canvas = document.getElementById("view");
  const slider = document.getElementById("closing");
  const told = document.getElementById("told");
  const pointed = document.getElementById("pointed");
  const pen = canvas.getContext("2d", { willReadFrequently: true }); // it is painted dot by dot

  // ---- what is drawn: corners of prisms, each at the foot and at the head, and the triangles between them
  const corners = []; // per corner: [bent, plate or track, track that leads there, x or along, y or beside, height]
  const triangles = []; // per triangle: [corner, corner, corner, body, surface]
  const marks = []; // per mark: [corner at the foot, corner at the head, body]
  let surfaces = 1;

  const prism = (body, bent, on, track, low, high, ground, surface) => {
    const [places, faces, rim] = ground;
    const foot = corners.length, count = places.length / 2, head = foot + count;
    for (const z of [low, high]) {
      for (let i = 0; i < count; i++) corners.push([bent, on, track, places[2 * i], places[2 * i + 1], z]);
    }
    for (let i = 0; i < faces.length; i += 3) {
      const [a, b, c] = [faces[i], faces[i + 1], faces[i + 2]];
      triangles.push([head + a, head + b, head + c, body, surface]);
      triangles.push([foot + a, foot + c, foot + b, body, surface + 1]);
    }
    for (let i = 0; i < rim.length; i += 2) {
      const [a, b] = [rim[i], rim[i + 1]];
      triangles.push([foot + a, foot + b, head + b, body, surface + 2], [foot + a, head + b, head + a, body, surface + 2]);
    }
  };

  data.bodies.forEach((body, number) => {
    for (const [plate, track, low, high, ...ground] of body.flat) {
      prism(number, false, plate, track, low, high, ground, surfaces);
      surfaces += 3;
    }
    const bent = new Map();
    for (const [track, low, high, ...ground] of body.bent) {
      if (!bent.has(track)) bent.set(track, (surfaces += 3) - 3);
      prism(number, true, track, track, low, high, ground, bent.get(track));
    }
    for (const [plate, track, low, high, x, y] of body.marks) {
      marks.push([corners.length, corners.length + 1, number]);
      corners.push([false, plate, track, x, y, low], [false, plate, track, x, y, high]);
    }
  });

  // ---- the wallet at one moment
  const blend = (rows, share) => {
    const at = share * (rows.length - 1), i = Math.min(Math.floor(at), rows.length - 2), part = at - i;
    return rows[i].map((value, k) => value + part * (rows[i + 1][k] - value));
  };
  const lifted = (turns, plate, x, y, z) => {
    for (let hinge = data.plates[plate]; hinge.parent >= 0; hinge = data.plates[plate]) {
      const [ax, ay] = hinge.at, [wx, wy] = hinge.way, dx = x - ax, dy = y - ay;
      const across = dx * wx + dy * wy - hinge.zone, beside = dy * wx - dx * wy;
      const angle = turns[3 * plate + 2], c = Math.cos(angle), s = Math.sin(angle);
      const out = turns[3 * plate] + across * c - z * s;
      z = turns[3 * plate + 1] + across * s + z * c;
      x = ax + wx * out - wy * beside;
      y = ay + wy * out + wx * beside;
      plate = hinge.parent;
    }
    return [x, y, z];
  };
  const onTrack = (turns, arcs, track, along, beside, above) => {
    const [plate, low] = data.tracks[track], hinge = data.plates[plate];
    const [heading, curvature, length] = arcs.slice(5 * track, 5 * track + 3);
    let x = along, z = 0, end = 0;
    if (along > 0.005) {
      end = heading + curvature * along;
      const even = Math.abs(curvature) < 1e-6;
      x = even ? along * Math.cos(heading) : (Math.sin(end) - Math.sin(heading)) / curvature;
      z = even ? along * Math.sin(heading) : (Math.cos(heading) - Math.cos(end)) / curvature;
      if (along > length - 0.005) end = turns[3 * plate + 2];
    }
    x -= above * Math.sin(end);
    z += low + above * Math.cos(end);
    const [wx, wy] = hinge.way;
    return lifted(
      turns, hinge.parent, hinge.at[0] + wx * x - wy * beside, hinge.at[1] + wy * x + wx * beside, z);
  };
  const placed = (share) => {
    const turns = blend(data.turns, share), arcs = data.tracks.length ? blend(data.arcs, share) : [];
    return corners.map(([bent, on, track, x, y, z]) => {
      if (bent) return onTrack(turns, arcs, on, x - arcs[5 * on + 3], y, z);
      const hinge = data.plates[on], drawn = track >= 0 ? arcs[5 * track + 4] : 0;
      if (drawn > 0) {
        const [wx, wy] = hinge.way, dx = x - hinge.at[0], dy = y - hinge.at[1];
        const across = dx * wx + dy * wy - hinge.zone;
        if (across < drawn) {
          const along = arcs[5 * track + 2] + across - drawn;
          return onTrack(turns, arcs, track, along, dy * wx - dx * wy, z - data.tracks[track][2]);
        }
        x -= drawn * wx;
        y -= drawn * wy;
      }
      return lifted(turns, on, x, y, z);
    });
  };
  // Places as seen from the plate that stays where it is; a row laid on its side is turned with it.
  const standing = (share) => {
    const all = placed(share), turns = blend(data.turns, share), still = data.still;
    const [o, ex, ey, ez] = [[0, 0, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1]].map((p) => lifted(turns, still, ...p));
    const axes = [ex, ey, ez].map((e) => e.map((v, i) => v - o[i]));
    return all.map((p) => {
      const [x, y, z] = axes.map((axis) => axis.reduce((sum, v, i) => sum + v * (p[i] - o[i]), 0));
      return data.turned ? [y, -x, z] : [x, y, z];
    });
  };
  window.standing = standing; // for whoever wants to check the sums

  // ---- how it is looked at
  const product = (a, b) => a.map((row) => [0, 1, 2].map((k) => row[0] * b[0][k] + row[1] * b[1][k] + row[2] * b[2][k]));
  const aboutX = (v) => [[1, 0, 0], [0, Math.cos(v), -Math.sin(v)], [0, Math.sin(v), Math.cos(v)]];
  const aboutY = (v) => [[Math.cos(v), 0, Math.sin(v)], [0, 1, 0], [-Math.sin(v), 0, Math.cos(v)]];
  const aboutZ = (v) => [[Math.cos(v), -Math.sin(v), 0], [Math.sin(v), Math.cos(v), 0], [0, 0, 1]];
  const looking = ([spin, over, tilt]) => product(aboutX(tilt), product(aboutY(over), aboutZ(spin)));
  const look = { axes: looking(data.look), zoom: 1, share: data.share };
  const hidden = new Set();
  let under = -1; // the body under the pointer
  let bodiesSeen = null, width = 0, height = 0, grain = 1;

  const reach = (() => {
    const box = [[Infinity, -Infinity], [Infinity, -Infinity], [Infinity, -Infinity]];
    for (const p of standing(0)) p.forEach((v, i) => { box[i] = [Math.min(box[i][0], v), Math.max(box[i][1], v)]; });
    return Math.hypot(...box.map(([a, b]) => b - a)) / 2;
  })();

  // Half the height of the wallet as it is looked at first, open, closed and as it stands first.
  const tall = Math.max(...[0, data.share, 1].map((share) => {
    const heights = standing(share).map((p) => look.axes[1].reduce((sum, v, i) => sum + v * p[i], 0));
    return heights.reduce((a, b) => Math.max(a, b)) - heights.reduce((a, b) => Math.min(a, b));
  })) / 2;

  const middle = (points) => [0, 1, 2].map((i) => {
    let low = Infinity, high = -Infinity;
    for (const p of points) { low = Math.min(low, p[i]); high = Math.max(high, p[i]); }
    return (low + high) / 2;
  });

  let moment = { share: -1 };
  const now = () => {
    if (moment.share !== look.share) {
      const points = standing(look.share);
      moment = { share: look.share, points, middle: middle(points) };
    }
    return moment;
  };

  const seen = () => {
    const room = Math.min((0.5 * width) / reach, (0.75 * height) / reach, (0.44 * height) / tall);
    const { points, middle: m } = now(), scale = room * look.zoom;
    const [right, up, out] = look.axes, flat = new Float64Array(points.length * 3);
    points.forEach((p, i) => {
      const x = p[0] - m[0], y = p[1] - m[1], z = p[2] - m[2];
      flat[3 * i] = width / 2 + scale * (right[0] * x + right[1] * y + right[2] * z);
      flat[3 * i + 1] = height / 2 - scale * (up[0] * x + up[1] * y + up[2] * z);
      flat[3 * i + 2] = scale * (out[0] * x + out[1] * y + out[2] * z);
    });
    return { flat, scale };
  };

  // ---- painting: every dot keeps the nearest surface, then lines are drawn where surfaces end
  const paint = () => {
    const { flat, scale } = seen(), dots = width * height;
    const depth = new Float32Array(dots).fill(-Infinity), shown = new Int32Array(dots), bodies = new Int16Array(dots).fill(-1);
    const picture = pen.createImageData(width, height), ink = new Uint32Array(picture.data.buffer);
    ink.fill(0xffffffff);
    for (const [a, b, c, body, surface] of triangles) {
      if (hidden.has(body)) continue;
      const ax = flat[3 * a], ay = flat[3 * a + 1], bx = flat[3 * b], by = flat[3 * b + 1];
      const cx = flat[3 * c], cy = flat[3 * c + 1];
      const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
      if (area >= -1e-9) continue; // seen from behind; y runs down here
      const az = flat[3 * a + 2], bz = flat[3 * b + 2], cz = flat[3 * c + 2];
      const gx = ((bz - az) * (cy - ay) - (cz - az) * (by - ay)) / area;
      const gy = ((cz - az) * (bx - ax) - (bz - az) * (cx - ax)) / area;
      const colour = shade(body, gx, gy);
      const top = Math.max(0, Math.ceil(Math.min(ay, by, cy))), bottom = Math.min(height - 1, Math.floor(Math.max(ay, by, cy)));
      for (let y = top; y <= bottom; y++) {
        let left = Infinity, right = -Infinity;
        const cut = (x0, y0, x1, y1) => {
          if ((y0 <= y && y1 >= y) || (y1 <= y && y0 >= y)) {
            const low = y1 === y0 ? Math.min(x0, x1) : x0 + ((y - y0) / (y1 - y0)) * (x1 - x0);
            const high = y1 === y0 ? Math.max(x0, x1) : low;
            if (low < left) left = low;
            if (high > right) right = high;
          }
        };
        cut(ax, ay, bx, by); cut(bx, by, cx, cy); cut(cx, cy, ax, ay);
        const from = Math.max(0, Math.ceil(left)), to = Math.min(width - 1, Math.floor(right));
        let z = az + gx * (from - ax) + gy * (y - ay);
        for (let x = from, at = y * width + from; x <= to; x++, at++, z += gx) {
          if (z > depth[at]) { depth[at] = z; shown[at] = surface; bodies[at] = body; ink[at] = colour; }
        }
      }
    }
    outline(ink, depth, shown, bodies, 0.35 * scale);
    spots(ink, depth, flat, scale);
    bodiesSeen = bodies;
    pen.putImageData(picture, 0, 0);
  };

  const shade = (body, gx, gy) => {
    // The way a surface looks follows from how its depth falls off; light comes from the upper left, in front.
    const n = Math.hypot(gx, gy, 1), light = 0.55 + 0.45 * Math.max(0, (0.35 * gx + 0.45 * gy + 0.82) / n);
    const lift = body === under ? 0.35 : 0;
    const [r, g, b] = data.bodies[body].tone.map((v) => Math.min(255, Math.round((v + (255 - v) * lift) * Math.min(light, 1))));
    return (255 << 24) | (b << 16) | (g << 8) | r;
  };

  const darker = (colour, by) => {
    const part = (shift) => Math.round(((colour >>> shift) & 255) * by) << shift;
    return (255 << 24) | part(16) | part(8) | part(0);
  };

  const outline = (ink, depth, shown, bodies, jump) => {
    const bare = ink.slice();
    for (let y = 0; y < height - 1; y++) {
      for (let x = 0, at = y * width; x < width - 1; x++, at++) {
        for (const next of [at + 1, at + width]) {
          if (shown[at] === shown[next]) continue;
          const near = depth[at] > depth[next] ? at : next;
          const strong = bodies[at] !== bodies[next] || Math.abs(depth[at] - depth[next]) > jump;
          ink[near] = darker(bare[near], strong ? 0.25 : 0.72);
        }
      }
    }
  };

  const spots = (ink, depth, flat, scale) => {
    const radius = Math.max(0.7 * grain, 0.45 * scale), near = 0.5 * scale + 1;
    for (const [foot, head, body] of marks) {
      if (hidden.has(body)) continue;
      for (const corner of [foot, head]) {
        const [mx, my, mz] = [flat[3 * corner], flat[3 * corner + 1], flat[3 * corner + 2]];
        for (let y = Math.ceil(my - radius); y <= my + radius; y++) {
          for (let x = Math.ceil(mx - radius); x <= mx + radius; x++) {
            if (x < 0 || y < 0 || x >= width || y >= height || Math.hypot(x - mx, y - my) > radius) continue;
            const at = y * width + x;
            if (Math.abs(depth[at] - mz) < near) ink[at] = darker(ink[at], 0.3);
          }
        }
      }
    }
  };

  // ---- fine when it rests, quick while it moves
  let waiting = 0, resting = 0;
  const size = (fine) => {
    const box = canvas.getBoundingClientRect();
    grain = fine ? 2 : 1;
    width = Math.max(2, Math.round(box.width * grain));
    height = Math.max(2, Math.round(box.height * grain));
    if (canvas.width !== width || canvas.height !== height) { canvas.width = width; canvas.height = height; }
  };
  const draw = (fine) => { size(fine); paint(); };
  const show = () => {
    if (!waiting) waiting = requestAnimationFrame(() => { waiting = 0; draw(false); });
    clearTimeout(resting);
    resting = setTimeout(() => { cancelAnimationFrame(waiting); waiting = 0; draw(true); }, 160);
  };

  // ---- turning, nearing, closing
  const turn = (dx, dy) => {
    look.axes = product(product(aboutX(dy), aboutY(dx)), look.axes);
    show();
  };
  const near = (by) => { look.zoom = Math.max(0.4, Math.min(12, look.zoom * by)); show(); };
  const close = (share) => {
    look.share = Math.max(0, Math.min(1, share));
    slider.value = Math.round(1000 * look.share);
    const part = Math.round(100 * look.share), step = Math.min(data.steps, Math.floor(look.share * data.steps + 1e-9) + 1);
    const words = part === 0 ? "laid open" : part === 100 ? "closed" : `${part} % closed`;
    told.textContent = data.steps > 1 && part > 0 && part < 100 ? `${words}, fold ${step} of ${data.steps} moving` : words;
    show();
  };

  const fingers = new Map();
  const spread = () => { const [a, b] = [...fingers.values()]; return Math.hypot(a.x - b.x, a.y - b.y); };
  canvas.addEventListener("pointerdown", (event) => {
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    try { canvas.setPointerCapture(event.pointerId); } catch { /* a pointer that is gone already */ }
  });
  canvas.addEventListener("pointermove", (event) => {
    const last = fingers.get(event.pointerId);
    if (!last) return point(event);
    const apart = fingers.size === 2 ? spread() : 0;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (fingers.size === 1) turn((event.clientX - last.x) * 0.008, (event.clientY - last.y) * 0.008);
    else if (fingers.size === 2 && apart > 0) near(spread() / apart);
  });
  for (const end of ["pointerup", "pointercancel"]) canvas.addEventListener(end, (event) => fingers.delete(event.pointerId));
  canvas.addEventListener("wheel", (event) => { event.preventDefault(); near(Math.exp(-event.deltaY * 0.0015)); }, { passive: false });
  canvas.addEventListener("keydown", (event) => {
    const act = {
      ArrowLeft: () => turn(-0.1, 0), ArrowRight: () => turn(0.1, 0), ArrowUp: () => turn(0, -0.1), ArrowDown: () => turn(0, 0.1),
      "+": () => near(1.15), "-": () => near(1 / 1.15), PageUp: () => close(look.share - 0.02), PageDown: () => close(look.share + 0.02),
      Home: () => close(0), End: () => close(1),
    }[event.key];
    if (act) { event.preventDefault(); act(); }
  });
  slider.addEventListener("input", () => close(slider.value / 1000));
  document.querySelectorAll("button[data-look]").forEach((button) => button.addEventListener("click", () => {
    look.axes = looking(button.dataset.look.split(" ").map(Number));
    show();
  }));

  const point = (event) => {
    const box = canvas.getBoundingClientRect();
    const x = Math.floor(((event.clientX - box.left) * width) / box.width), y = Math.floor(((event.clientY - box.top) * height) / box.height);
    mark(bodiesSeen && x >= 0 && y >= 0 && x < width && y < height ? bodiesSeen[y * width + x] : -1);
  };
  const mark = (body) => {
    if (body === under) return;
    under = body;
    pointed.textContent = body >= 0 ? data.bodies[body].name : "";
    show();
  };
  canvas.addEventListener("pointerleave", () => mark(-1));

  document.querySelectorAll("input[data-body]").forEach((box) => {
    const body = Number(box.dataset.body), row = box.closest("label");
    box.addEventListener("change", () => { box.checked ? hidden.delete(body) : hidden.add(body); show(); });
    row.addEventListener("pointerenter", () => mark(body));
    row.addEventListener("pointerleave", () => mark(-1));
  });

  document.documentElement.classList.add("moving");
  addEventListener("resize", show);
  close(look.share);
  draw(true);
})();
