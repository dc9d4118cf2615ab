/* Oil networks solved by node pressures with SUNDIALS KINSOL (dense and KLU), analytic Jacobian.
 *
 *   circuit ORACLE_DIR [ORACLE_DIR ...] [--repeats N]
 *
 * Each directory holds c04-networks.json and c04-network-pressures.csv.  Output: one tab-separated line per network
 * and method on stdout, remarks on stderr.
 *
 * The flow of every element is a function of the pressure drop; the rough pipes (Churchill) are inverted together by a
 * safeguarded Newton on ln Re, four to a register.  Everything that does not depend on the pressures is folded into coefficients once per
 * operating point (counted in the solve time).  Residual and conductances are computed in one pass; the Jacobian
 * callback only scatters the conductances of that pass.
 */
#define _GNU_SOURCE
#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunmatrix/sunmatrix_sparse.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <klu.h>

#define BAR 1e5
#define MAXN 400
#define MAXE 800
#define MAXOP 16

static double now_ns(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec * 1e9 + t.tv_nsec;
}

static int cmp_double(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* ------------------------------------------------------------------------------------------------ reading JSON */
typedef struct Json Json;
struct Json { char kind; double num; char *str; char *key; Json *first, *next; };

static const char *jp;
static void skip(void) { while (isspace((unsigned char)*jp)) jp++; }
static char *jstring(void) {
    const char *a = ++jp;
    while (*jp && *jp != '"') jp++;
    char *s = strndup(a, (size_t)(jp - a));
    jp++;
    return s;
}
static Json *jvalue(void) {
    Json *v = calloc(1, sizeof *v), **tail = &v->first;
    skip();
    if (*jp == '{' || *jp == '[') {
        v->kind = *jp;
        char close = *jp == '{' ? '}' : ']';
        jp++;
        for (skip(); *jp && *jp != close; skip()) {
            if (*jp == ',') { jp++; continue; }
            char *key = NULL;
            if (v->kind == '{') { key = jstring(); skip(); jp++; }
            *tail = jvalue();
            (*tail)->key = key;
            tail = &(*tail)->next;
        }
        jp++;
    } else if (*jp == '"') { v->kind = 's'; v->str = jstring(); }
    else { char *e; v->kind = 'n'; v->num = strtod(jp, &e); if (e == jp) { fprintf(stderr, "bad JSON near %.20s\n", jp); exit(2); } jp = e; }
    return v;
}
static Json *get(Json *o, const char *key) {
    for (Json *c = o->first; c; c = c->next) if (c->key && !strcmp(c->key, key)) return c;
    fprintf(stderr, "missing key %s\n", key);
    exit(2);
}
static double num(Json *o, const char *key) { return get(o, key)->num; }
static char *slurp(const char *path) {
    FILE *f = fopen(path, "rb");
    if (!f) return NULL;
    fseek(f, 0, SEEK_END);
    long n = ftell(f);
    rewind(f);
    char *s = malloc((size_t)n + 1);
    if (fread(s, 1, (size_t)n, f) != (size_t)n) exit(2);
    s[n] = 0;
    fclose(f);
    return s;
}

/* ------------------------------------------------------------------------------------------------ networks */
enum Kind { LAMINAR, BEARING, PUMP, ORIFICE, RELIEF, CHURCHILL };
typedef struct {
    enum Kind kind;
    int from, to;                       /* node index, -1 for the reservoir */
    double d, L, rough, Cd;             /* pipes, orifices */
    double D, c, land, ecc, lands;      /* bearings */
    double V, leak, ratio;              /* pumps */
    double seat, preload, spring, xmax; /* relief */
} Element;

typedef struct {
    char id[32];
    int n, ne;                          /* free nodes, elements */
    char node[MAXN][16];
    Element el[MAXE];
    int nrpm, nmu;
    double rpm[8], mu[8], rho;
    double ref[MAXOP][MAXN];
    int has_ref;
} Net;

static int node_of(Net *net, const char *name, const char *reservoir) {
    if (!strcmp(name, reservoir)) return -1;
    for (int i = 0; i < net->n; i++) if (!strcmp(net->node[i], name)) return i;
    snprintf(net->node[net->n], sizeof net->node[0], "%s", name);
    return net->n++;
}

static void read_net(Net *net, Json *j, double rho) {
    memset(net, 0, sizeof *net);
    snprintf(net->id, sizeof net->id, "%s", get(j, "id")->str);
    net->rho = rho;
    const char *res = get(j, "reservoir")->str;
    for (Json *c = get(j, "nodes")->first; c; c = c->next) node_of(net, c->str, res);
    for (Json *c = get(j, "engine_speeds_rpm")->first; c; c = c->next) net->rpm[net->nrpm++] = c->num;
    for (Json *c = get(j, "viscosities_Pa_s")->first; c; c = c->next) net->mu[net->nmu++] = c->num;
    for (Json *c = get(j, "elements")->first; c; c = c->next) {
        Element *e = &net->el[net->ne++];
        const char *t = get(c, "type")->str;
        e->from = node_of(net, get(c, "from")->str, res);
        e->to = node_of(net, get(c, "to")->str, res);
        if (!strcmp(t, "pipe_laminar")) { e->kind = LAMINAR; e->d = num(c, "d_m"); e->L = num(c, "L_m"); }
        else if (!strcmp(t, "pipe_churchill")) { e->kind = CHURCHILL; e->d = num(c, "d_m"); e->L = num(c, "L_m"); e->rough = num(c, "roughness_m"); }
        else if (!strcmp(t, "orifice")) { e->kind = ORIFICE; e->d = num(c, "d_m"); e->Cd = num(c, "Cd"); }
        else if (!strcmp(t, "bearing")) { e->kind = BEARING; e->D = num(c, "D_m"); e->c = num(c, "c_m"); e->land = num(c, "land_m"); e->ecc = num(c, "eccentricity_ratio"); e->lands = num(c, "lands"); }
        else if (!strcmp(t, "pump")) { e->kind = PUMP; e->V = num(c, "V_m3_per_rev"); e->leak = num(c, "k_leak_m3"); e->ratio = num(c, "speed_ratio"); }
        else if (!strcmp(t, "relief")) { e->kind = RELIEF; e->seat = num(c, "d_seat_m"); e->preload = num(c, "preload_N"); e->spring = num(c, "spring_N_per_m"); e->xmax = num(c, "x_max_m"); e->Cd = num(c, "Cd"); }
        else { fprintf(stderr, "unknown element type %s\n", t); exit(2); }
    }
}

static int op_index(const Net *net, double rpm, double mu) {
    for (int m = 0; m < net->nmu; m++) for (int s = 0; s < net->nrpm; s++)
        if (fabs(net->rpm[s] / rpm - 1) < 1e-9 && fabs(net->mu[m] / mu - 1) < 1e-9) return m * net->nrpm + s;
    return -1;
}

static void read_refs(Net *nets, int count, const char *path) {
    FILE *f = fopen(path, "r");
    char line[512], id[64], node[64];
    double rpm, mu, p;
    if (!f) return;
    while (fgets(line, sizeof line, f)) {
        if (sscanf(line, "%63[^,],%lf,%lf,%63[^,],%lf", id, &rpm, &mu, node, &p) != 5) continue;
        for (int k = 0; k < count; k++) if (!strcmp(nets[k].id, id)) {
            int op = op_index(&nets[k], rpm, mu);
            if (op < 0) continue;
            for (int i = 0; i < nets[k].n; i++) if (!strcmp(nets[k].node[i], node)) { nets[k].ref[op][i] = p; nets[k].has_ref = 1; }
        }
    }
    fclose(f);
}

/* Appends a copy of piece with its own node names; clearances are scaled so that no two pieces are alike. */
static int append(Net *net, const Net *piece, double scale) {
    int base = net->n;
    for (int i = 0; i < piece->n; i++) snprintf(net->node[net->n++], sizeof net->node[0], "%.4s_%d", piece->node[i], base);
    for (int k = 0; k < piece->ne; k++) {
        Element e = piece->el[k];
        if (e.from >= 0) e.from += base;
        if (e.to >= 0) e.to += base;
        if (e.kind == BEARING) e.c *= scale;
        net->el[net->ne++] = e;
    }
    return base;
}
static int find(const Net *piece, const char *name) {
    for (int i = 0; i < piece->n; i++) if (!strcmp(piece->node[i], name)) return i;
    fprintf(stderr, "no node %s in %s\n", name, piece->id);
    exit(2);
}
static void link_pipe(Net *net, int a, int b, double d, double L) {
    net->el[net->ne++] = (Element){.kind = CHURCHILL, .from = a, .to = b, .d = d, .L = L, .rough = 5e-6};
}
static void start_from(Net *net, const Net *piece, const char *id) {
    memset(net, 0, sizeof *net);
    snprintf(net->id, sizeof net->id, "%s", id);
    net->rho = piece->rho;
    net->nrpm = piece->nrpm; net->nmu = piece->nmu;
    memcpy(net->rpm, piece->rpm, sizeof net->rpm); memcpy(net->mu, piece->mu, sizeof net->mu);
}
static const Net *by_id(const Net *nets, int count, const char *id) {
    for (int k = 0; k < count; k++) if (!strcmp(nets[k].id, id)) return &nets[k];
    return NULL;
}
/* about 80 elements: the largest open network (69) with the smallest (8) hung on it by three pipes */
static int synthetic80(Net *net, const Net *nets, int count) {
    const Net *a = by_id(nets, count, "N6"), *b = by_id(nets, count, "N1");
    if (!a || !b) return 0;
    start_from(net, a, "S80");
    int i = append(net, a, 1.0), j = append(net, b, 1.0);
    link_pipe(net, i + find(a, "G9"), j + find(b, "G1"), 0.008, 0.3);
    link_pipe(net, i + find(a, "K1"), j + find(b, "P"), 0.008, 0.5);
    link_pipe(net, i + find(a, "C7"), j + find(b, "G2"), 0.006, 0.4);
    return 1;
}
/* 150 nodes: three large, one middle, two small networks chained by gallery pipes */
static int synthetic150(Net *net, const Net *nets, int count) {
    const Net *a = by_id(nets, count, "N6"), *b = by_id(nets, count, "N5"), *c = by_id(nets, count, "N1");
    if (!a || !b || !c) return 0;
    start_from(net, a, "S150");
    int p0 = append(net, a, 1.00), p1 = append(net, a, 1.04), p2 = append(net, a, 0.97), p3 = append(net, b, 1.02), p4 = append(net, c, 1.0), p5 = append(net, c, 1.05);
    link_pipe(net, p0 + find(a, "G9"), p1 + find(a, "G1"), 0.009, 0.4);
    link_pipe(net, p1 + find(a, "G9"), p2 + find(a, "G1"), 0.009, 0.4);
    link_pipe(net, p2 + find(a, "G9"), p3 + find(b, "G1"), 0.009, 0.4);
    link_pipe(net, p3 + find(b, "G5"), p4 + find(c, "G1"), 0.008, 0.3);
    link_pipe(net, p4 + find(c, "G2"), p5 + find(c, "G1"), 0.006, 0.3);
    return 1;
}

/* ------------------------------------------------------------------------------------------------ element laws */
typedef struct { double a, b, c, d; } Coef;   /* meaning by kind, see prepare */

typedef struct {
    const Net *net;
    double mu, rpm, qs;
    Coef k[MAXE];
    double g[MAXE];           /* conductance dq/ddp in (q/qs) per bar, of the last evaluation */
    double y[MAXE];           /* ln Re of the last evaluation of a rough pipe, NAN when none */
    double u[MAXN];           /* pressures of the last evaluation */
    int have;
    int nb, bi[MAXE + 4];     /* the rough pipes of one evaluation, solved together */
    double bt[MAXE + 4], brr[MAXE + 4], bdp[MAXE + 4], by[MAXE + 4], bs[MAXE + 4], bRe[MAXE + 4], bl[MAXE + 4], blo[MAXE + 4], bhi[MAXE + 4];
    /* dense and sparse scatter */
    sunindextype colptr[MAXN + 1], rowind[MAXN + 4 * MAXE];
    int nnz, pff[MAXE], ptt[MAXE], pft[MAXE], ptf[MAXE];
    int sparse;
    long evals, inner;
    double *trace; long ntrace, captrace;
} Work;

static void prepare(Work *w, double rpm, double mu) {
    const Net *net = w->net;
    double qs = 0;
    w->mu = mu; w->rpm = rpm; w->have = 0;
    for (int i = 0; i < net->ne; i++) if (net->el[i].kind == PUMP) qs += net->el[i].V * rpm / 60 * net->el[i].ratio;
    w->qs = qs;
    double s = BAR / qs, rho = net->rho;
    for (int i = 0; i < net->ne; i++) {
        const Element *e = &net->el[i];
        Coef *k = &w->k[i];
        switch (e->kind) {
        case LAMINAR: k->a = M_PI * e->d * e->d * e->d * e->d / (128 * mu * e->L) * s; break;
        case BEARING: k->a = M_PI * e->D * e->c * e->c * e->c * (1 + 1.5 * e->ecc * e->ecc) / (12 * mu * e->land) * e->lands * s; break;
        case PUMP: k->a = e->leak / mu * s; k->b = e->V * rpm / 60 * e->ratio / qs; break;
        case ORIFICE: k->a = e->Cd * M_PI * e->d * e->d / 4 * sqrt(2 * BAR / rho) / qs; break;
        case RELIEF: {                                    /* lift x = b dp + c within 0..xmax ; area = min(pi d x, As) */
            double As = M_PI * e->seat * e->seat / 4;
            k->a = e->Cd * sqrt(2 * BAR / rho) / qs;      /* times area times sqrt(dp/bar) */
            k->b = As * BAR / e->spring; k->c = -e->preload / e->spring;
            break; }
        case CHURCHILL:                                   /* f Re^2 = 2 rho d^3 dp/(L mu^2) = a dp/bar ; q/qs = b Re */
            k->a = 2 * rho * e->d * e->d * e->d * BAR / (e->L * mu * mu);
            k->b = M_PI * e->d * mu / (4 * rho) / qs;
            k->c = 0.27 * e->rough / e->d;
            k->d = e->rough / e->d / 3.7;
            break;
        }
    }
    if (mu <= 0) abort();
}

/* Below Re = 850 the law equals 64/Re to the last digit ((A+B)^-1.5 is less than 1e-16 of (8/Re)^12).
 * Above, ln f(Re) + 2 ln Re = ln t, t = f Re^2, is solved for ln Re in rough_pipes.c; the first guess is the smaller of the
 * laminar one and the explicit rough-turbulent one; later passes start from the last answer. */
int rough_pipes(int n, const double *t, const double *rr27, double *y, double *slope, double *Re, double *lt, double *lo, double *hi);
static double first_guess(double t, double rr37) {
    double K = sqrt(t), laminar = t / 64, turbulent = -0.86858896380650363 * K * log(rr37 + 2.51 / K);
    return log(turbulent < laminar ? turbulent : laminar);
}

/* One pass over the elements: residual f (inflow of each node over pump flow) and the conductances w->g. */
static void evaluate(Work *w, const double *restrict p, double *restrict f) {
    const Net *net = w->net;
    w->evals++;
    w->nb = 0;
    for (int i = 0; i < net->n; i++) f[i] = 0;
    for (int i = 0; i < net->ne; i++) {
        const Element *e = &net->el[i];
        const Coef *k = &w->k[i];
        double dp = (e->from >= 0 ? p[e->from] : 0) - (e->to >= 0 ? p[e->to] : 0), q, g;
        switch (e->kind) {
        default:
        case LAMINAR: case BEARING: g = k->a; q = g * dp; break;
        case PUMP: g = k->a; q = k->b + g * dp; break;
        case ORIFICE: {
            double a = fabs(dp);
            if (a > 1e-8) { double s = sqrt(a); q = copysign(k->a * s, dp); g = 0.5 * k->a / s; }
            else { g = k->a * 1e4; q = g * dp; }                     /* within 0.001 Pa of rest: a straight line */
            break; }
        case RELIEF:
            if (dp <= 0) { q = 0; g = 0; }
            else {
                double x = k->b * dp + k->c, As = M_PI * e->seat * e->seat / 4, pd = M_PI * e->seat, dA = pd * k->b, A;
                if (x <= 0) { q = 0; g = 0; break; }
                if (x > e->xmax) { x = e->xmax; dA = 0; }
                A = pd * x;
                if (A > As) { A = As; dA = 0; }
                double s = sqrt(dp);
                q = k->a * A * s;
                g = k->a * (dA * s + 0.5 * A / s);
            }
            break;
        case CHURCHILL: {
            double t = fabs(dp) * k->a;
            if (t >= 64 * 850.0) {                                   /* rough or turning: done together below */
                int b = w->nb++;
                w->bi[b] = i; w->bt[b] = t; w->brr[b] = k->c; w->bdp[b] = dp;
                double y = w->y[i];
                w->by[b] = isnan(y) ? first_guess(t, k->d) : y;
                continue;
            }
            g = k->b * k->a / 64; q = g * dp; w->y[i] = NAN;
            break; }
        }
        w->g[i] = g;
        if (e->from >= 0) f[e->from] -= q;
        if (e->to >= 0) f[e->to] += q;
    }
    int nb = w->nb;
    if (!nb) return;
    for (int b = nb; b & 3; b++) { w->bt[b] = w->bt[nb - 1]; w->brr[b] = w->brr[nb - 1]; w->by[b] = w->by[nb - 1]; }
    w->inner += rough_pipes((nb + 3) & ~3, w->bt, w->brr, w->by, w->bs, w->bRe, w->bl, w->blo, w->bhi);
    for (int b = 0; b < nb; b++) {
        int i = w->bi[b];
        const Element *e = &net->el[i];
        double q = copysign(w->k[i].b * w->bRe[b], w->bdp[b]);
        w->y[i] = w->by[b];
        w->g[i] = q * w->bs[b] / w->bdp[b];
        if (e->from >= 0) f[e->from] -= q;
        if (e->to >= 0) f[e->to] += q;
    }
}

/* ------------------------------------------------------------------------------------------------ KINSOL callbacks */
static int residual(N_Vector u, N_Vector f, void *data) {
    Work *w = data;
    const double *p = N_VGetArrayPointer(u);
    if (w->trace) {
        if ((w->ntrace + 1) * w->net->n > w->captrace) { w->captrace = 2 * w->captrace + 64 * w->net->n; w->trace = realloc(w->trace, (size_t)w->captrace * sizeof(double)); }
        memcpy(w->trace + w->ntrace++ * w->net->n, p, (size_t)w->net->n * sizeof(double));
    }
    evaluate(w, p, N_VGetArrayPointer(f));
    memcpy(w->u, p, (size_t)w->net->n * sizeof(double));
    w->have = 1;
    return 0;
}
static void refresh(Work *w, const double *p) {
    double f[MAXN];
    if (w->have && !memcmp(w->u, p, (size_t)w->net->n * sizeof(double))) return;
    evaluate(w, p, f);
    memcpy(w->u, p, (size_t)w->net->n * sizeof(double));
    w->have = 1;
}
static int jac_dense(N_Vector u, N_Vector fu, SUNMatrix J, void *data, N_Vector t1, N_Vector t2) {
    Work *w = data;
    (void)fu; (void)t1; (void)t2;
    refresh(w, N_VGetArrayPointer(u));
    double **c = SUNDenseMatrix_Cols(J);                              /* KINSOL has zeroed J */
    for (int i = 0; i < w->net->ne; i++) {
        int a = w->net->el[i].from, b = w->net->el[i].to;
        double g = w->g[i];
        if (a >= 0) c[a][a] -= g;
        if (b >= 0) c[b][b] -= g;
        if (a >= 0 && b >= 0) { c[b][a] += g; c[a][b] += g; }
    }
    return 0;
}
static void fill_sparse(const Work *w, double *v) {
    memset(v, 0, (size_t)w->nnz * sizeof(double));
    for (int i = 0; i < w->net->ne; i++) {
        double g = w->g[i];
        if (w->pff[i] >= 0) v[w->pff[i]] -= g;
        if (w->ptt[i] >= 0) v[w->ptt[i]] -= g;
        if (w->pft[i] >= 0) { v[w->pft[i]] += g; v[w->ptf[i]] += g; }
    }
}
static int jac_sparse(N_Vector u, N_Vector fu, SUNMatrix J, void *data, N_Vector t1, N_Vector t2) {
    Work *w = data;
    (void)fu; (void)t1; (void)t2;
    refresh(w, N_VGetArrayPointer(u));
    memcpy(SUNSparseMatrix_IndexPointers(J), w->colptr, (size_t)(w->net->n + 1) * sizeof(sunindextype));
    memcpy(SUNSparseMatrix_IndexValues(J), w->rowind, (size_t)w->nnz * sizeof(sunindextype));
    fill_sparse(w, SUNSparseMatrix_Data(J));
    return 0;
}
static void pattern(Work *w) {
    const Net *net = w->net;
    static char mark[MAXN][MAXN];
    static int at[MAXN][MAXN];
    int n = net->n, nnz = 0;
    memset(mark, 0, sizeof mark);
    for (int i = 0; i < n; i++) mark[i][i] = 1;
    for (int i = 0; i < net->ne; i++) { int a = net->el[i].from, b = net->el[i].to; if (a >= 0 && b >= 0) mark[a][b] = mark[b][a] = 1; }
    for (int c = 0; c < n; c++) {
        w->colptr[c] = nnz;
        for (int r = 0; r < n; r++) if (mark[r][c]) { at[r][c] = nnz; w->rowind[nnz++] = r; }
    }
    w->colptr[n] = nnz;
    w->nnz = nnz;
    for (int i = 0; i < net->ne; i++) {
        int a = net->el[i].from, b = net->el[i].to;
        w->pff[i] = a >= 0 ? at[a][a] : -1;
        w->ptt[i] = b >= 0 ? at[b][b] : -1;
        w->pft[i] = a >= 0 && b >= 0 ? at[a][b] : -1;
        w->ptf[i] = a >= 0 && b >= 0 ? at[b][a] : -1;
    }
}

/* ------------------------------------------------------------------------------------------------ lean reference
 * Not a peer: Newton on the same laws with one static sparse LDL' (the Jacobian is a weighted graph Laplacian,
 * minimum-degree order found once), backtracking on the residual.  Shows what the work itself costs. */
typedef struct {
    int n, perm[MAXN], inv[MAXN], colptr[MAXN + 1], row[MAXN * 16], nl;
    int pd[MAXE][2], po[MAXE];
    double d[MAXN], l[MAXN * 16];
    int upd_ptr[MAXN + 1], *upd;      /* for column j: list of (target position) for every pair of rows */
} Lean;

static void lean_setup(Lean *s, const Net *net) {
    static char m[MAXN][MAXN];
    static int at[MAXN][MAXN];
    int n = net->n;
    char done[MAXN] = {0};
    memset(m, 0, sizeof m);
    s->n = n;
    for (int i = 0; i < net->ne; i++) { int a = net->el[i].from, b = net->el[i].to; if (a >= 0 && b >= 0 && a != b) m[a][b] = m[b][a] = 1; }
    for (int k = 0; k < n; k++) {                                     /* minimum degree */
        int best = -1, bd = 1 << 30;
        for (int i = 0; i < n; i++) if (!done[i]) { int d = 0; for (int j = 0; j < n; j++) d += m[i][j] && !done[j]; if (d < bd) { bd = d; best = i; } }
        s->perm[k] = best; s->inv[best] = k; done[best] = 1;
        for (int i = 0; i < n; i++) if (m[best][i] && !done[i]) for (int j = 0; j < n; j++) if (i != j && m[best][j] && !done[j]) m[i][j] = 1;
    }
    s->nl = 0;
    for (int k = 0; k < n; k++) {
        s->colptr[k] = s->nl;
        for (int r = k + 1; r < n; r++) if (m[s->perm[r]][s->perm[k]]) { at[r][k] = s->nl; s->row[s->nl++] = r; }
    }
    s->colptr[n] = s->nl;
    if (s->nl > MAXN * 16) abort();
    int nu = 0;
    for (int k = 0; k < n; k++) { int c = s->colptr[k + 1] - s->colptr[k]; nu += c * (c - 1) / 2; }
    s->upd = malloc(sizeof(int) * (size_t)(nu + 1));
    nu = 0;
    for (int k = 0; k < n; k++) {
        s->upd_ptr[k] = nu;
        for (int a = s->colptr[k]; a < s->colptr[k + 1]; a++) for (int b = a + 1; b < s->colptr[k + 1]; b++) s->upd[nu++] = at[s->row[b]][s->row[a]];
    }
    s->upd_ptr[n] = nu;
    for (int i = 0; i < net->ne; i++) {
        int a = net->el[i].from, b = net->el[i].to;
        s->pd[i][0] = a >= 0 ? s->inv[a] : -1; s->pd[i][1] = b >= 0 ? s->inv[b] : -1; s->po[i] = -1;
        if (a >= 0 && b >= 0 && a != b) { int r = s->inv[a], c = s->inv[b]; if (r < c) { int t = r; r = c; c = t; } s->po[i] = at[r][c]; }
    }
}
static void lean_step(Lean *s, const Work *w, const double *f, double *dx) {   /* Laplacian * dx = f */
    const Net *net = w->net;
    int n = s->n;
    double *restrict d = s->d, *restrict l = s->l, x[MAXN];
    memset(d, 0, sizeof(double) * (size_t)n);
    memset(l, 0, sizeof(double) * (size_t)s->nl);
    for (int i = 0; i < net->ne; i++) {
        double g = w->g[i];
        if (s->pd[i][0] >= 0) d[s->pd[i][0]] += g;
        if (s->pd[i][1] >= 0) d[s->pd[i][1]] += g;
        if (s->po[i] >= 0) l[s->po[i]] -= g;
    }
    for (int i = 0; i < n; i++) x[i] = f[s->perm[i]];
    for (int k = 0; k < n; k++) {
        double id = 1 / d[k], xk = x[k];
        int u = s->upd_ptr[k];
        for (int a = s->colptr[k]; a < s->colptr[k + 1]; a++) {
            double v = l[a], t = v * id;
            d[s->row[a]] -= v * t;
            for (int b = a + 1; b < s->colptr[k + 1]; b++) l[s->upd[u++]] -= t * l[b];
            x[s->row[a]] -= t * xk;
        }
        for (int a = s->colptr[k]; a < s->colptr[k + 1]; a++) l[a] *= id;
        d[k] = id;
    }
    for (int k = n - 1; k >= 0; k--) {
        double v = x[k] * d[k];
        for (int a = s->colptr[k]; a < s->colptr[k + 1]; a++) v -= l[a] * x[s->row[a]];
        x[k] = v;
    }
    for (int i = 0; i < n; i++) dx[s->perm[i]] = x[i];
}
static double maxabs(const double *f, int n) { double m = 0; for (int i = 0; i < n; i++) { double a = fabs(f[i]); if (a > m) m = a; } return m; }
static double norm2(const double *f, int n) { double s = 0; for (int i = 0; i < n; i++) s += f[i] * f[i]; return s; }
static int lean_solve(Lean *s, Work *w, double *p, double tol) {
    double f[MAXN], fn[MAXN], dx[MAXN], pn[MAXN];
    int n = s->n;
    evaluate(w, p, f);
    for (int it = 0; it < 300; it++) {
        if (maxabs(f, n) <= tol) return it;
        lean_step(s, w, f, dx);
        double f0 = norm2(f, n), st = 1;
        for (int b = 0; b < 30; b++, st *= 0.5) {
            for (int i = 0; i < n; i++) pn[i] = p[i] + st * dx[i];
            evaluate(w, pn, fn);
            if (norm2(fn, n) < f0 * (1 - 1e-4 * st)) break;
        }
        memcpy(p, pn, sizeof(double) * (size_t)n);
        memcpy(f, fn, sizeof(double) * (size_t)n);
    }
    return -1;
}

/* ------------------------------------------------------------------------------------------------ measuring */
typedef struct { void *kin; SUNContext ctx; SUNMatrix J; SUNLinearSolver ls; N_Vector u, one; } Solver;

static void quiet(int code, const char *m, const char *fn, char *msg, void *d) { (void)code; (void)m; (void)fn; (void)msg; (void)d; }

static Solver make_solver(Work *w, int sparse, int msbset, double tol) {
    Solver s;
    int n = w->net->n;
    SUNContext_Create(NULL, &s.ctx);
    s.u = N_VNew_Serial(n, s.ctx);
    s.one = N_VNew_Serial(n, s.ctx);
    N_VConst(1.0, s.one);
    s.kin = KINCreate(s.ctx);
    KINSetErrHandlerFn(s.kin, quiet, NULL);
    KINInit(s.kin, residual, s.u);
    KINSetUserData(s.kin, w);
    if (sparse) {                                                     /* AMD order, no row scaling: the fastest of KLU's settings here */
        s.J = SUNSparseMatrix(n, n, w->nnz, CSC_MAT, s.ctx);
        s.ls = SUNLinSol_KLU(s.u, s.J, s.ctx);
        SUNLinSol_KLUSetOrdering(s.ls, 0);
        SUNLinSol_KLUGetCommon(s.ls)->scale = -1;
    }
    else { s.J = SUNDenseMatrix(n, n, s.ctx); s.ls = SUNLinSol_Dense(s.u, s.J, s.ctx); }
    KINSetLinearSolver(s.kin, s.ls, s.J);
    KINSetJacFn(s.kin, sparse ? jac_sparse : jac_dense);
    KINSetNoResMon(s.kin, SUNTRUE);
    KINSetMaxSubSetupCalls(s.kin, 1);
    KINSetMaxSetupCalls(s.kin, msbset);
    KINSetFuncNormTol(s.kin, tol);
    KINSetScaledStepTol(s.kin, 1e-15);
    KINSetNumMaxIters(s.kin, 400);
    KINSetMaxNewtonStep(s.kin, 1e4);
    w->sparse = sparse;
    return s;
}
static void free_solver(Solver *s) {
    KINFree(&s->kin);
    SUNLinSolFree(s->ls);
    SUNMatDestroy(s->J);
    N_VDestroy(s->u);
    N_VDestroy(s->one);
    SUNContext_Free(&s->ctx);
}

static double *start_p;      /* free-node start pressures in bar */
static double tolerance = 1e-12;

typedef struct { double med, lo, hi; } Spread;
static Spread spread(double *t, int n) { qsort(t, (size_t)n, sizeof *t, cmp_double); return (Spread){t[n / 2], t[0], t[n - 1]}; }

typedef struct { long fails, iters, evals; double err_own, err_max, imb, relief_open; } Pass;

/* one pass over all operating points; cont: start from the previous point's solution */
static Pass pass(Work *w, Solver *s, int cont, int check) {
    const Net *net = w->net;
    Pass r = {0};
    double *u = N_VGetArrayPointer(s->u);
    int have = 0;
    for (int m = 0; m < net->nmu; m++) for (int sp = 0; sp < net->nrpm; sp++) {
        if (!cont || !have) { memcpy(u, start_p, sizeof(double) * (size_t)net->n); for (int i = 0; i < net->ne; i++) w->y[i] = NAN; }
        prepare(w, net->rpm[sp], net->mu[m]);
        int rc = KINSol(s->kin, s->u, KIN_LINESEARCH, s->one, s->one);
        long it, fe;
        KINGetNumNonlinSolvIters(s->kin, &it);
        KINGetNumFuncEvals(s->kin, &fe);
        r.iters += it; r.evals += fe;
        int ok = rc >= 0;
        if (check) {
            double f[MAXN], pm = 0;
            evaluate(w, u, f);
            double imb = maxabs(f, net->n);
            if (imb > 1e-9) ok = 0;
            if (imb > r.imb) r.imb = imb;
            int op = m * net->nrpm + sp;
            if (net->has_ref) {
                for (int i = 0; i < net->n; i++) if (fabs(net->ref[op][i]) > pm) pm = fabs(net->ref[op][i]);
                for (int i = 0; i < net->n && ok; i++) {
                    double d = fabs(u[i] * BAR - net->ref[op][i]);
                    if (d / fabs(net->ref[op][i]) > r.err_own) r.err_own = d / fabs(net->ref[op][i]);
                    if (d / pm > r.err_max) r.err_max = d / pm;
                }
            }
            if (!ok) fprintf(stderr, "  %s %s rpm %g mu %g: rc %d imbalance %.2e after %ld iterations\n", net->id, w->sparse ? "KLU" : "dense", net->rpm[sp], net->mu[m], rc, imb, it);
        }
        if (!ok) r.fails++;
        have = ok;
    }
    return r;
}

static void line(const char *net, const char *method, const char *what, const char *unit, Spread s, int reps, const char *note) {
    printf("circuit\t%s %s\t%s\t%s\t%.6g\t%.6g\t%.6g\t%d\t%s\n", net, method, what, unit, s.lo, s.med, s.hi, reps, note);
}

static Lean lean;
static Work work;

static void measure(const Net *net, int repeats) {
    Work *w = &work;
    memset(w, 0, sizeof *w);
    w->net = net;
    pattern(w);
    double p0[MAXN];
    for (int i = 0; i < net->n; i++) p0[i] = 2.0;
    start_p = p0;
    int ops = net->nmu * net->nrpm;
    double *t = malloc(sizeof(double) * (size_t)repeats);
    char note[256];
    for (int cont = 0; cont < 2; cont++) for (int sparse = 0; sparse < 2; sparse++) {
        Solver s = make_solver(w, sparse, 1, tolerance);
        pass(w, &s, cont, 0);
        Pass c = pass(w, &s, cont, 1);
        w->evals = w->inner = 0;
        for (int k = 0; k < repeats; k++) {
            double a = now_ns();
            pass(w, &s, cont, 0);
            t[k] = (now_ns() - a) / ops;
        }
        free_solver(&s);
        snprintf(note, sizeof note, "nodes %d elements %d; Newton %.1f, evaluations %.1f per solve; failed %ld of %d; worst rel. error %.1e (of own) %.1e (of highest); imbalance %.0e",
                 net->n + 1, net->ne, (double)c.iters / ops, (double)c.evals / ops, c.fails, ops, net->has_ref ? c.err_own : NAN, net->has_ref ? c.err_max : NAN, c.imb);
        char method[64];
        snprintf(method, sizeof method, "KINSOL %s %s", sparse ? "KLU" : "dense", cont ? "continued" : "cold");
        line(net->id, method, "one solve", "ns", spread(t, repeats), repeats, note);

        /* floor: replay of every point at which KINSOL asked for the residual, elements only */
        if (sparse) {
            Solver s2 = make_solver(w, 1, 1, tolerance);
            w->captrace = 64 * net->n; w->trace = malloc(sizeof(double) * (size_t)w->captrace); w->ntrace = 0;
            long from[MAXOP + 1];
            /* trace op by op to know which viscosity each point belongs to */
            double *u = N_VGetArrayPointer(s2.u);
            int op = 0;
            for (int m = 0; m < net->nmu; m++) for (int sp = 0; sp < net->nrpm; sp++, op++) {
                from[op] = w->ntrace;
                if (!cont || op == 0) { memcpy(u, p0, sizeof(double) * (size_t)net->n); for (int i = 0; i < net->ne; i++) w->y[i] = NAN; }
                prepare(w, net->rpm[sp], net->mu[m]);
                KINSol(s2.kin, s2.u, KIN_LINESEARCH, s2.one, s2.one);
            }
            from[op] = w->ntrace;
            double *trace = w->trace;
            w->trace = NULL;
            free_solver(&s2);
            double f[MAXN], v[MAXN + 4 * MAXE], sink = 0;
            w->inner = 0;
            for (int k = 0; k < repeats; k++) {
                double a = now_ns();
                op = 0;
                for (int m = 0; m < net->nmu; m++) for (int sp = 0; sp < net->nrpm; sp++, op++) {
                    if (!cont || op == 0) for (int i = 0; i < net->ne; i++) w->y[i] = NAN;
                    prepare(w, net->rpm[sp], net->mu[m]);
                    for (long q = from[op]; q < from[op + 1]; q++) { evaluate(w, trace + q * net->n, f); fill_sparse(w, v); sink += f[0] + v[0]; }
                }
                t[k] = (now_ns() - a) / ops;
            }
            double per = (double)from[ops] / ops;
            Spread sp = spread(t, repeats), one = {sp.med / per, sp.lo / per, sp.hi / per};
            snprintf(note, sizeof note, "same points as KINSOL asked for, elements and Jacobian values only; %.1f evaluations; rough-pipe Newton steps %.1f per evaluation, all pipes in step%s", per, (double)w->inner / repeats / from[ops], sink == 12345 ? "!" : "");
            line(net->id, cont ? "floor continued" : "floor cold", "element passes of one solve", "ns", sp, repeats, note);
            line(net->id, cont ? "evaluation continued" : "evaluation cold", "residual + Jacobian once", "ns", one, repeats, "floor / evaluations");
            free(trace);
        }
    }
    lean_setup(&lean, net);
    for (int cont = 0; cont < 2; cont++) {
        double p[MAXN];
        long it = 0, fails = 0;
        double err = 0;
        for (int k = -1; k < repeats; k++) {
            double a = now_ns();
            int op = 0;
            if (k == -1) w->evals = 0;
            for (int m = 0; m < net->nmu; m++) for (int sp = 0; sp < net->nrpm; sp++, op++) {
                if (!cont || op == 0) { memcpy(p, p0, sizeof(double) * (size_t)net->n); for (int i = 0; i < net->ne; i++) w->y[i] = NAN; }
                prepare(w, net->rpm[sp], net->mu[m]);
                int r = lean_solve(&lean, w, p, tolerance);
                if (k == -1) { if (r < 0) fails++; else it += r;
                    if (net->has_ref) for (int i = 0; i < net->n; i++) { double d = fabs(p[i] * BAR / net->ref[op][i] - 1); if (d > err) err = d; } }
            }
            if (k >= 0) t[k] = (now_ns() - a) / ops;
            else snprintf(note, sizeof note, "not a peer: own Newton, static sparse LDL', nnz(L) %d; Newton %.1f, evaluations %.1f; failed %ld; worst rel. error %.1e", lean.nl, (double)it / ops, (double)w->evals / ops, fails, net->has_ref ? err : NAN);
        }
        line(net->id, cont ? "lean C continued" : "lean C cold", "one solve", "ns", spread(t, repeats), repeats, note);
    }
    free(lean.upd);
    free(t);
}

static int self_check(void) {                 /* the inverse against the law itself */
    double worst = 0;
    long steps = 0, calls = 0;
    double t[4], rr27[4], y[4], s[4], Re[4], l[4], lo[4], hi[4];
    for (double rr = 1e-6; rr < 2e-2; rr *= 3) for (double lr = log(850); lr < 16; lr += 0.01) {
        double R = exp(lr);
        double A = pow(2.457 * log(1 / (pow(7 / R, 0.9) + 0.27 * rr)), 16), B = pow(37530 / R, 16);
        double f = 8 * pow(pow(8 / R, 12) + pow(A + B, -1.5), 1.0 / 12);
        for (int k = 0; k < 4; k++) { t[k] = f * R * R; rr27[k] = 0.27 * rr; y[k] = first_guess(t[k], rr / 3.7); }
        steps += rough_pipes(4, t, rr27, y, s, Re, l, lo, hi);
        calls++;
        if (!(fabs(Re[0] / R - 1) <= worst)) worst = fabs(Re[0] / R - 1);
    }
    fprintf(stderr, "rough-pipe inverse: worst relative error of Re %.1e over %ld points, %.2f steps each from cold\n", worst, calls, (double)steps / calls);
    return worst < 1e-12;
}

int main(int argc, char **argv) {
    static Net nets[24], syn;
    int count = 0, repeats = 201;
    if (!self_check()) { fprintf(stderr, "rough-pipe inverse is wrong\n"); return 1; }
    for (int i = 1; i < argc; i++) {
        if (!strcmp(argv[i], "--repeats")) { repeats = atoi(argv[++i]); continue; }
        char path[4096];
        snprintf(path, sizeof path, "%s/c04-networks.json", argv[i]);
        char *text = slurp(path);
        if (!text) { fprintf(stderr, "no %s, skipped\n", path); continue; }
        jp = text;
        Json *j = jvalue();
        int first = count;
        for (Json *c = get(j, "networks")->first; c; c = c->next) read_net(&nets[count++], c, num(j, "density_kg_m3"));
        snprintf(path, sizeof path, "%s/c04-network-pressures.csv", argv[i]);
        read_refs(nets + first, count - first, path);
        free(text);
    }
    if (!count) { fprintf(stderr, "usage: circuit ORACLE_DIR... [--repeats N]\n"); return 2; }
    for (int k = 0; k < count; k++) measure(&nets[k], repeats);
    if (synthetic80(&syn, nets, count)) measure(&syn, repeats);
    if (synthetic150(&syn, nets, count)) measure(&syn, repeats);
    return 0;
}
