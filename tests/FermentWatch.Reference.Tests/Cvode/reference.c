/* The ferment model's equations once more, in plain C and solved by SUNDIALS CVODE, to check the product's solver against.
 * Constants come in the order of Simulation/Slot.cs; temperatures are straight lines between quarter hours. */
#include <math.h>
#include <string.h>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

enum { RATE = 0, UPKEEP = 4, GROWTH = 8, YL = 12, YA = 16, TMIN = 20, TOPT = 24, TMAX = 28, PHF = 32, ACIDF = 36, LN0 = 40,
       PHPOW = 44, CROWD = 45, AW = 46, HALFS = 47, LAG = 48, EXCH = 49, OUTER = 50, KL = 51, KA = 52, M1 = 53, M12 = 54, C1 = 55,
       C12 = 56, C123 = 57, P1 = 58, P12 = 59, KG = 60, KW = 61, FREE = 62, SID = 63, MT = 64, CT = 65, PT = 66, GT = 67, NATIVE = 68,
       START = 69, INNER = 70, ZT = 71, S0 = 72, SI0 = 73, L0 = 74, A0 = 75, LLIM = 76, PACE = 77, STAGE = 81, OFFSET = 82, TITRE = 86 };
enum { N = 14 };

typedef struct {
    const double *c, *celsius, *spread;
    int nodes;
    double lnh;
    long calls;
} jar;

static double line(const double *nodes, int count, double hours)
{
    double x = hours / 0.25;
    int i = (int)x;
    if (i > count - 2) i = count - 2;
    return nodes[i] + (x - i) * (nodes[i + 1] - nodes[i]);
}

static double temperature(const jar *j, double hours)
{
    double t = line(j->celsius, j->nodes, hours) + j->c[ZT] * line(j->spread, j->nodes, hours);
    return t < -5 ? -5 : t > 45 ? 45 : t;
}

static double lactic_constant(const double *c, double t) { return c[KL] * pow(10, -5e-5 * (t - 22.5) * (t - 22.5)); }

static double native(const double *c, double hours) { return 1 - (1 - c[START]) * exp(-c[EXCH] * hours); }

static double balance(const double *c, double n, double l, double a, double t, double lnh)
{
    double kl = lactic_constant(c, t);
    for (int i = 0; i < 50; i++) {
        double h = exp(lnh);
        double f = n * c[SID] + h * c[FREE] - c[KW] / h, d = h * c[FREE] + c[KW] / h;
        double q = kl / (kl + h); f -= l * q; d += l * q * (1 - q);
        q = c[KA] / (c[KA] + h); f -= a * q; d += a * q * (1 - q);
        q = c[KG] / (c[KG] + h); f -= n * c[GT] * q; d += n * c[GT] * q * (1 - q);
        double z = h * h + c[M1] * h + c[M12];
        q = (c[M1] * h + 2 * c[M12]) / z; f -= n * c[MT] * q; d += n * c[MT] * ((c[M1] * h + 4 * c[M12]) / z - q * q);
        z = h * h + c[P1] * h + c[P12];
        q = (c[P1] * h + 2 * c[P12]) / z; f -= n * c[PT] * q; d += n * c[PT] * ((c[P1] * h + 4 * c[P12]) / z - q * q);
        z = h * h * h + c[C1] * h * h + c[C12] * h + c[C123];
        q = (c[C1] * h * h + 2 * c[C12] * h + 3 * c[C123]) / z;
        f -= n * c[CT] * q; d += n * c[CT] * ((c[C1] * h * h + 4 * c[C12] * h + 9 * c[C123]) / z - q * q);
        double step = f / d;
        if (step > 1.5) step = 1.5;
        if (step < -1.5) step = -1.5;
        lnh -= step;
        /* Newton doubles the digits: after this step the error is below 1e-12. */
        if (fabs(step) < 1e-6) break;
    }
    return lnh;
}

static double share(const double *c, int g, double t)
{
    double a = c[TMIN + g], o = c[TOPT + g], m = c[TMAX + g];
    if (t <= a || t >= m) return 0;
    return (t - m) * (t - a) * (t - a) / ((o - a) * ((o - a) * (t - o) - (o - m) * (o + a - 2 * t)));
}

/* What is given at days 0, 2, 6 and 16, along straight lines. */
static double knots(const double *v, double hours)
{
    static const double at[4] = { 0, 48, 144, 384 };
    if (hours >= at[3]) return v[3];
    int i = hours < at[1] ? 0 : hours < at[2] ? 1 : 2;
    return v[i] + (hours - at[i]) / (at[i + 1] - at[i]) * (v[i + 1] - v[i]);
}

static double positive(double x) { return x > 0 ? x : 0; }

static int rhs(realtype hours, N_Vector yv, N_Vector dv, void *user)
{
    jar *j = user;
    const double *c = j->c;
    const double *y = N_VGetArrayPointer(yv);
    double *dy = N_VGetArrayPointer(dv);
    double t = temperature(j, hours), l = positive(y[9]), a = positive(y[10]), s = positive(y[8]);
    j->calls++;
    j->lnh = balance(c, native(c, hours), l, a, t, j->lnh);
    double h = exp(j->lnh), u = l * h / (h + lactic_constant(c, t)) + c[AW] * a * h / (h + c[KA]);
    double thawed = t <= -2 ? 0 : t >= -1 ? 1 : t + 2;
    double fed = thawed * positive(1 - l * c[LLIM]) * s / (s + c[HALFS]), hp = pow(h, c[PHPOW]), u3 = u * u * u;
    double count[4], used = 0, made_l = 0, made_a = 0;
    for (int g = 0; g < 4; g++) count[g] = exp(y[g]);
    double ln_pace = knots(c + PACE, hours) + c[STAGE] * l / (l + 0.005), pace = exp(ln_pace < -2 ? -2 : ln_pace > 2 ? 2 : ln_pace);
    for (int g = 0; g < 4; g++) {
        double warmth = pace * share(c, g, t), bearable = fed * warmth / ((1 + hp * c[PHF + g]) * (1 + u3 * c[ACIDF + g]));
        double growth = c[RATE + g] * bearable * positive(1 - count[g] * c[CROWD]) / (1 + c[LAG] * y[4 + g]);
        double eaten = count[g] * (c[GROWTH + g] * growth + c[UPKEEP + g] * bearable);
        dy[g] = growth;
        dy[4 + g] = -c[RATE + g] * warmth * y[4 + g];
        used += eaten; made_l += eaten * c[YL + g]; made_a += eaten * c[YA + g];
    }
    for (int i = 0; i < 3; i++) {
        double flow = c[EXCH] * (y[11 + i] - y[8 + i]);
        dy[8 + i] = flow * (1 - c[OUTER]) + (i == 0 ? -used : i == 1 ? made_l : made_a);
        dy[11 + i] = -flow * c[OUTER];
    }
    return 0;
}

/* Solves one member; writes pH and acidity at the given hours (rising, the first may be 0). Returns 0, or CVODE's flag. */
int fw_solve(const double *c, const double *celsius, const double *spread, int nodes, const double *hours, int times,
             double relative, double absolute, int adams, double *ph, double *acidity, long *calls)
{
    SUNContext context;
    if (SUNContext_Create(NULL, &context)) return -100;
    N_Vector y = N_VNew_Serial(N, context);
    double *v = N_VGetArrayPointer(y);
    memset(v, 0, N * sizeof(double));
    for (int g = 0; g < 4; g++) { v[g] = c[LN0 + g]; v[4 + g] = 1; }
    v[8] = c[S0]; v[11] = c[SI0]; v[9] = c[L0]; v[10] = c[A0];
    jar j = { c, celsius, spread, nodes, -5 * log(10), 0 };
    void *cv = CVodeCreate(adams ? CV_ADAMS : CV_BDF, context);
    CVodeInit(cv, rhs, 0, y);
    CVodeSStolerances(cv, relative, absolute);
    CVodeSetUserData(cv, &j);
    CVodeSetMaxNumSteps(cv, 1000000);
    SUNMatrix matrix = NULL; SUNLinearSolver linear = NULL; SUNNonlinearSolver fixed = NULL;
    if (adams) { fixed = SUNNonlinSol_FixedPoint(y, 0, context); CVodeSetNonlinearSolver(cv, fixed); }
    else { matrix = SUNDenseMatrix(N, N, context); linear = SUNLinSol_Dense(y, matrix, context); CVodeSetLinearSolver(cv, linear, matrix); }
    int flag = 0;
    double at = 0;
    for (int i = 0; i < times && flag >= 0; i++) {
        if (hours[i] > 0) flag = CVode(cv, hours[i], y, &at, CV_NORMAL);
        double n = native(c, hours[i]);
        ph[i] = -balance(c, n, positive(v[9]), positive(v[10]), temperature(&j, hours[i]), j.lnh) / log(10) + knots(c + OFFSET, hours[i]);
        acidity[i] = positive(9.008 * c[TITRE] * (v[9] + v[10] + n * c[NATIVE]));
    }
    *calls = j.calls;
    if (fixed) SUNNonlinSolFree(fixed);
    if (linear) SUNLinSolFree(linear);
    if (matrix) SUNMatDestroy(matrix);
    CVodeFree(&cv);
    N_VDestroy(y);
    SUNContext_Free(&context);
    return flag < 0 ? flag : 0;
}
