/*
 * The step of engine/cycle/ram-kernel.ts in C, line for line, as the yardstick of `npm run bench`.
 *
 * Plain line, steady source, fixed head in the vessel. Reads its numbers from a text file that speed.bench.ts writes, runs the
 * asked steps several times, and prints the fastest time of a step and what came out, which must equal the engine's.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define TABLE_SIZE 256
#define LAST_INTERVAL (TABLE_SIZE - 2)
#define TREMBLE 0.05
#define GRAVITY 9.80665
#define NOUGHT 1e-300

static FILE *input;

static double number(void) {
  double value;
  if (fscanf(input, "%lf", &value) != 1) {
    fprintf(stderr, "the file of numbers ends too soon\n");
    exit(1);
  }
  return value;
}

static double *numbers(int count) {
  double *list = malloc(sizeof(double) * (size_t)count);
  for (int i = 0; i < count; i++) list[i] = number();
  return list;
}

int main(int argc, char **argv) {
  if (argc < 2 || !(input = fopen(argv[1], "r"))) {
    fprintf(stderr, "name the file of numbers that speed.bench.ts writes\n");
    return 1;
  }
  const int n = (int)number();
  const long steps = (long)number();
  const int repeats = (int)number();
  const double dt = number(), fall = number(), tableScale = number();
  double *impedances = numbers(n);
  double *offsets = numbers(n + 1);
  const int tableCount = (int)number();
  double *tables = numbers(tableCount);
  double *vapourAt = numbers(n + 1);
  const double stroke = number(), forceShut = number(), forceOpen = number(), seatForce = number();
  const double curtainPerOpening = number(), port2 = number(), drag = number(), perGap = number();
  const double perMass = number(), snifterAlpha = number(), inertance = number();
  const double deliveryLoss = number(), cracking = number(), backFlowAllowed = number();
  const double elasticity = number(), vapourHead = number(), vesselHead = number();
  const double maxSubstep = number();
  fclose(input);

  const double root2g = sqrt(2 * GRAVITY);
  const double forceSlope = (forceOpen - forceShut) / stroke;
  const double curtain2Open = curtainPerOpening * stroke * curtainPerOpening * stroke;
  const double shareOpen = port2 / (curtain2Open + port2);
  const double alphaOpen = sqrt(curtain2Open * shareOpen) * root2g;
  int *tableOffset = malloc(sizeof(int) * (size_t)(n + 1));
  for (int i = 0; i <= n; i++) tableOffset[i] = (int)offsets[i];
  double *twiceB = malloc(sizeof(double) * (size_t)n);
  for (int i = 0; i < n; i++) twiceB[i] = 2 * impedances[i];
  double *f = malloc(sizeof(double) * (size_t)n), *g = malloc(sizeof(double) * (size_t)n);
  double *q = malloc(sizeof(double) * (size_t)(n + 1));
  const double impedanceEnd = impedances[n - 1];
  const int endOffset = tableOffset[n];

  double best = 1e300, time = 0, wasted = 0, delivered = 0, supplied = 0;
  long beats = 0, cavities = 0;
  for (int repeat = 0; repeat < repeats; repeat++) {
    for (int i = 0; i < n; i++) f[i] = g[i] = fall;
    memset(q, 0, sizeof(double) * (size_t)(n + 1));
    double head = fall, opening = stroke, speed = 0, delivery = 0, backFlow = 0, passed = 0;
    double lastMotion = 0, widest = stroke, peak = -1e300, lowest = 1e300, fastest = 0;
    double driveFlow = 0, wasteFlow = 0;
    int isDelivering = 0;
    time = wasted = delivered = supplied = 0;
    beats = cavities = 0;
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    for (long step = 0; step < steps; step++) {
      double u = 0.5 * fabs(q[0] + q[1]) * tableScale;
      int k = (int)u;
      double w = u - k;
      if (k > LAST_INTERVAL) k = LAST_INTERVAL, w = 1;
      int t = k + tableOffset[0];
      double conductance = tables[t];
      conductance += w * (tables[t + 1] - conductance);
      const double intake = (fall - g[0]) * conductance;
      q[0] = intake;
      supplied += dt * intake;

      double arriving = f[0];
      f[0] = g[0] + twiceB[0] * intake;
      const double halfScale = tableScale / 2;
      double left = twiceB[0];
      double here = q[1];
      for (int i = 1; i < n; i++) {
        const double next = f[i], opposing = g[i];
        const double behind = q[i + 1];
        u = fabs(here + behind) * halfScale;
        here = behind;
        k = (int)u;
        w = u - k;
        if (k > LAST_INTERVAL) k = LAST_INTERVAL, w = 1;
        t = k + tableOffset[i];
        const double at = tables[t];
        conductance = at + w * (tables[t + 1] - at);
        const double flow = (arriving - opposing) * conductance;
        q[i] = flow;
        g[i - 1] = arriving - left * flow;
        left = twiceB[i];
        const double sent = opposing + left * flow;
        f[i] = sent;
        if (sent + opposing < vapourAt[i]) cavities++;
        arriving = next;
      }

      u = fabs(driveFlow) * tableScale;
      k = (int)u;
      w = u - k;
      if (k > LAST_INTERVAL) k = LAST_INTERVAL, w = 1;
      t = k + endOffset;
      double impedance = tables[t];
      impedance += w * (tables[t + 1] - impedance);
      const double perImpedance = 1 / impedance;

      if (!isDelivering && speed == 0 && (opening == 0 || opening == stroke)) {
        const double alpha = opening == 0 ? snifterAlpha : alphaOpen + snifterAlpha;
        const double beta = elasticity / dt + perImpedance;
        const double drive = (elasticity / dt) * head + arriving * perImpedance;
        const double size = fabs(drive);
        const double root = (2 * size) / (alpha + sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
        const double x = drive < 0 ? -root * root : root * root;
        int isQuiet = x <= vesselHead + cracking && x > vapourHead;
        const double leaving = alpha * (drive < 0 ? -root : root);
        if (isQuiet) {
          if (opening == 0)
            isQuiet = seatForce * x >= forceShut;
          else {
            const double gap = leaving * perGap;
            isQuiet = seatForce * shareOpen * x + drag * gap * fabs(gap) <= forceOpen;
          }
        }
        if (isQuiet) {
          head = x;
          driveFlow = (arriving - x) * perImpedance;
          wasteFlow = leaving;
          wasted += dt * leaving;
          g[n - 1] = arriving - 2 * impedanceEnd * driveFlow;
          q[n] = driveFlow;
          if (driveFlow > fastest) fastest = driveFlow;
          if (x > peak) peak = x;
          if (x < lowest) lowest = x;
          time += dt;
          continue;
        }
      }

      const int substeps = (int)ceil(dt / maxSubstep);
      const double h = dt / substeps, give = elasticity / h, perInertance = h / inertance;
      double volume = 0;
      for (int j = 1; j <= substeps; j++) {
        double alpha = snifterAlpha, share = 1;
        if (opening > 0) {
          const double curtain = curtainPerOpening * opening, curtain2 = curtain * curtain;
          share = port2 / (curtain2 + port2);
          alpha += sqrt(curtain2 * share) * root2g;
        }
        double beta = give + perImpedance;
        double drive = give * head + arriving * perImpedance;
        double fixed = 0, slope = 0;
        if (isDelivering) {
          const double damped = 1 / (1 + perInertance * deliveryLoss * fabs(delivery));
          fixed = (delivery - perInertance * vesselHead) * damped;
          slope = perInertance * damped;
          beta += slope;
          drive -= fixed;
        }
        double size = fabs(drive);
        double root = (2 * size) / (alpha + sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
        double x = drive < 0 ? -root * root : root * root;
        if (!isDelivering && x > vesselHead + cracking) {
          isDelivering = 1;
          backFlow = passed = 0;
          fixed = -perInertance * vesselHead;
          slope = perInertance;
          beta += slope;
          drive -= fixed;
          size = fabs(drive);
          root = (2 * size) / (alpha + sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
          x = drive < 0 ? -root * root : root * root;
        }
        double passing = 0;
        if (isDelivering) {
          delivery = fixed + slope * x;
          passing = delivery;
          if (delivery >= 0)
            passed += delivery * h;
          else {
            const double rest = fmin(backFlowAllowed, passed) - backFlow;
            backFlow -= delivery * h;
            if (-delivery * h >= rest) {
              passing = -rest / h;
              delivery = 0;
              isDelivering = 0;
              beta = give + perImpedance;
              drive = give * head + arriving * perImpedance - passing;
              size = fabs(drive);
              root = (2 * size) / (alpha + sqrt(alpha * alpha + 4 * beta * size) + NOUGHT);
              x = drive < 0 ? -root * root : root * root;
            }
          }
          lastMotion = time + j * h;
        }
        if (x < vapourHead) cavities++;
        driveFlow = (arriving - x) * perImpedance;
        wasteFlow = drive < 0 ? -alpha * root : alpha * root;
        head = x;
        volume += driveFlow;
        wasted += h * wasteFlow;
        delivered += h * passing;
        if (driveFlow > fastest) fastest = driveFlow;
        if (head > peak) peak = head;
        if (head < lowest) lowest = head;

        const double relative = wasteFlow * perGap + speed;
        const double closing = seatForce * share * head + drag * relative * fabs(relative);
        const double net = forceShut + forceSlope * opening - closing;
        if ((opening > 0 || net > 0) && (opening < stroke || net < 0)) {
          speed += h * net * perMass;
          opening += h * speed;
          lastMotion = time + j * h;
          if (opening > widest) widest = opening;
          if (opening >= stroke) {
            opening = stroke;
            speed = 0;
          } else if (opening <= 0) {
            opening = 0;
            speed = 0;
            if (widest > TREMBLE * stroke) beats++;
            widest = 0;
          }
        } else
          speed = 0;
      }
      const double meanFlow = volume / substeps;
      g[n - 1] = arriving - 2 * impedanceEnd * meanFlow;
      q[n] = meanFlow;
      time += dt;
    }
    clock_gettime(CLOCK_MONOTONIC, &to);
    const double spent = (double)(to.tv_sec - from.tv_sec) * 1e9 + (double)(to.tv_nsec - from.tv_nsec);
    if (spent / (double)steps < best) best = spent / (double)steps;
    if (lastMotion < 0 || peak < lowest || fastest < 0) return 1;
  }
  printf("%.3f %ld %.17g %.17g %.17g %ld\n", best, beats, wasted, delivered, supplied, cavities);
  return 0;
}
