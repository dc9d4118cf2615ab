using System.Text.Json;
using CsCheck;
using Thoubook.Mechanics.Fits;
using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Fits;

public sealed class StackTests
{
    private const string Independent = "independent computation: Fourier series of the characteristic function, error 1e-10";
    private const double Inch = 0.0254;

    private static readonly Gen<StackTerm[]> Terms = Gen.Select(Gen.Double[-2, 2], Gen.Double[-1, 1], Gen.Double[0, 0.1], Gen.Int[0, 3], (a, nominal, half, spread) => new StackTerm(a, nominal, half, (Spread)spread)).Array[1, 8];

    [Fact]
    public void LinearStacks_AgreeWithAnIndependentComputation()
    {
        foreach (var (row, terms) in LinearCases())
        {
            var gap = Stack.Of(terms);
            Check("nominal", "nominal", gap.Nominal, 1e-6);
            Check("standard deviation", "std", gap.StandardDeviation, 1e-6);
            Check("root sum square", "rss_half_width", gap.RootSumSquareHalfWidth, 1e-6);
            Check("worst least", "worst_case_min", gap.Worst.Least, 1e-6);
            Check("worst greatest", "worst_case_max", gap.Worst.Greatest, 1e-6);

            void Check(string what, string head, double got, double relative) =>
                Outside.Check($"stack {row["stack_id"]}: {what}", row.Number(head), got, Math.Max(1e-9, relative * Math.Abs(row.Number(head))), Independent, "computed");
        }
    }

    [Fact]
    public void DrawnStacks_AgreeWithAnIndependentComputation()
    {
        const int Draws = 200_000;
        foreach (var (row, terms) in LinearCases())
        {
            var sample = Stack.Draw(terms, Draws, 12);
            var limits = Interval.Between(row.Number("lower_limit"), row.Number("upper_limit"));
            var (p, s) = (row.Number("p_conform_dimless"), row.Number("std"));

            // Four standard errors of a share, of a deviation, and of a quantile (density of a normal at the 2.5 % point).
            Check("probability within (drawn)", p, sample.ShareWithin(limits), 4 * Math.Sqrt(p * (1 - p) / Draws));
            Check("standard deviation (drawn)", s, sample.StandardDeviation, 4 * s / Math.Sqrt(2 * Draws));
            Check("2.5 % point (drawn)", row.Number("q_2p5pct"), sample.Quantile(0.025), 11 * s / Math.Sqrt(Draws));
            Check("97.5 % point (drawn)", row.Number("q_97p5pct"), sample.Quantile(0.975), 11 * s / Math.Sqrt(Draws));

            void Check(string what, double expected, double got, double tolerance) =>
                Outside.Check($"stack {row["stack_id"]}: {what}", expected, got, tolerance, Independent, "computed");
        }
    }

    [Fact]
    public void NormalTerms_ClosedProbabilityAgreesWithAnIndependentComputation()
    {
        var (row, terms) = LinearCases().Single(one => one.Row["stack_id"] == "T2");
        var p = Stack.Within(Stack.Of(terms), Interval.Between(row.Number("lower_limit"), row.Number("upper_limit")), default(Silent));
        Outside.Check("stack T2: probability within (closed form)", row.Number("p_conform_dimless"), p.Within, 1e-6, Independent, "computed");
        Outside.Check("stack T2: probability below (closed form)", row.Number("p_below_dimless"), p.Below, 1e-5, Independent, "computed");
        Outside.Check("stack T2: probability above (closed form)", row.Number("p_above_dimless"), p.Above, 1e-5, Independent, "computed");
    }

    [Fact]
    public void NonlinearStacks_DrawnAgreeWithQuadrature()
    {
        const int Draws = 200_000;
        Check("T5", x =>
        {
            var area = Math.PI / 4 * x[0] * x[0];
            var chamber = (1000 * x[2]) + (area * (x[3] + x[4]));
            return ((area * x[1]) + chamber) / chamber;
        });
        Check("T6", x =>
        {
            var (journal, bore, land, pressure, viscosity) = (x[0] / 1000, x[1] / 1000, x[2] / 1000, x[3] * 1e5, x[4]);
            return Math.PI * bore * Math.Pow((bore - journal) / 2, 3) * pressure / (6 * viscosity * land);
        });

        static void Check(string id, MonteCarlo.Model model)
        {
            const string Source = "independent quadrature, one variable exact and the rest by randomised Sobol points";
            var row = ReferenceTable.Read("c07-stacks.csv").Single(row => row["stack_id"] == id);
            var sample = MonteCarlo.Propagate([.. Contributors(id).Select(AsDraw)], model, Draws, 21);
            var (p, s) = (row.Number("p_conform_dimless"), row.Number("std"));
            Outside.Check($"stack {id}: mean (drawn)", row.Number("mean"), sample.Mean, 4 * s / Math.Sqrt(Draws), Source, "computed");
            Outside.Check($"stack {id}: standard deviation (drawn)", s, sample.StandardDeviation, 6 * s / Math.Sqrt(2 * Draws), Source, "computed");
            Outside.Check($"stack {id}: probability within (drawn)", p, sample.ShareWithin(Interval.Between(row.Number("lower_limit"), row.Number("upper_limit"))), 4 * Math.Sqrt(p * (1 - p) / Draws), Source, "computed");
        }
    }

    [Fact]
    [Published("worked stack of a housing, two bushes and a shaft, tolerance stacks from first principles (inputs as printed)")]
    public void HousingBushesShaft_AgreesWithTheWorkedCase()
    {
        var gap = Stack.Of([new(1, 100, 0.10), new(-1, 5, 0.05), new(-1, 5, 0.05), new(-1, 88, 0.08)]);
        Outside.Check("housing stack: nominal clearance", 2.00, gap.Nominal, 1e-9);
        Outside.Check("housing stack: worst case least", 1.72, gap.Worst.Least, 1e-9);
        Outside.Check("housing stack: worst case greatest", 2.28, gap.Worst.Greatest, 1e-9);
        Outside.Check("housing stack: root sum square", 0.14629, gap.RootSumSquareHalfWidth, 5e-6);
        Outside.Check("housing stack: 1.5 × root sum square", 0.21943, gap.InflatedHalfWidth, 5e-6);
        Outside.Check("housing stack: deviation with uniform parts", 0.084459, gap.StandardDeviation, 5e-7);
    }

    [Theory]
    [InlineData("9.1: allowance", 37.50, 37.52, 37.45, 37.47, 0.03, 0.07)]
    [InlineData("9.5: least and greatest clearance", 30.000, 30.020, 29.982, 29.995, 0.005, 0.038)]
    [InlineData("9.6: least and greatest clearance", 25.000, 25.006, 24.986, 24.990, 0.010, 0.020)]
    [InlineData("9.9: least and greatest interference, negative", 100.000, 100.035, 100.085, 100.120, -0.120, -0.050)]
    [InlineData("9.10: least and greatest allowance", 100.000, 100.016, 99.964, 99.972, 0.028, 0.052)]
    [Published("P. C. Sharma, A Textbook of Production Engineering, chapter 9 (as recomputed in a companion)")]
    public void HoleAndShaft_AgreeWithTheTextbook(string what, double holeLeast, double holeGreatest, double shaftLeast, double shaftGreatest, double least, double greatest)
    {
        var worst = Stack.Of([
            new(1, 0.5 * (holeLeast + holeGreatest), 0.5 * (holeGreatest - holeLeast)),
            new(-1, 0.5 * (shaftLeast + shaftGreatest), 0.5 * (shaftGreatest - shaftLeast))]).Worst;
        Outside.Check($"fit {what}: least", least, worst.Least, 1e-9);
        Outside.Check($"fit {what}: greatest", greatest, worst.Greatest, 1e-9);
    }

    [Fact]
    [CommonPractice("a cast-aluminium pump body 1.25 in deep with steel gears gains about 0.8 thou of float for 60 K: 2 thou becomes 2.8")]
    public void PumpEndFloat_GrowsHot_AndShrinksCold()
    {
        var at20 = EndFloat(0);
        var hot = EndFloat(60);
        Outside.Check("end float gained for 60 K [thou]", 0.8, (hot - at20) / Inch * 1000, 0.1);
        Outside.Check("end float hot, from 2 thou [thou]", 2.8, hot / Inch * 1000, 0.1);
        Assert.True(EndFloat(-30) < at20);

        static double EndFloat(double rise) => Stack.Of([
            new(1, 1.2530 * Inch, 0) { Expansion = Of("cast aluminium"), Rise = rise },
            new(-1, 1.2510 * Inch, 0) { Expansion = Of("steel"), Rise = rise }]).Nominal;
    }

    [Fact]
    [CommonPractice("a pump's body must be deeper than its gears are wide, else it locks; a gasket adds its whole thickness to the float, a film next to nothing")]
    public void PumpEndFloat_IsBodyLessGearPlusGasket()
    {
        Outside.Check("float of a body as deep as the gear", 0, Float(1.2510, 0), 1e-12);
        Outside.Check("float added by a 3 thou gasket [thou]", 3, (Float(1.2530, 0.003) - Float(1.2530, 0)) / Inch * 1000, 1e-9);
        Assert.True(Float(1.2505, 0) < 0);

        static double Float(double body, double gasket) => Stack.Of([new(1, body * Inch, 0), new(-1, 1.2510 * Inch, 0), new(1, gasket * Inch, 0)]).Nominal;
    }

    [Fact]
    [CommonPractice("gear centres 100 mm apart in an aluminium case: about 1.9 thou more backlash for 60 K (20° pressure angle, steel gears)")]
    public void Backlash_WidensHot()
    {
        var (sources, u) = (Of("cast aluminium"), Known("cast aluminium").Expansion.StandardUncertainty);
        var slope = 2 * Math.Tan(20 * Math.PI / 180);
        var widening = Stack.Of([
            new(slope, 0.1, 0) { Expansion = sources, Rise = 60 },
            new(-slope, 0.1, 0) { Expansion = Of("steel"), Rise = 60 }]).Nominal;

        // Two standard uncertainties of the case's coefficient: the rule does not say which alloy.
        Outside.Check("backlash gained for 60 K [thou]", 1.9, widening / Inch * 1000, 2 * slope * 0.1 * 60 * u / Inch * 1000);
    }

    [Fact]
    [CommonPractice("±0.35 thou on a 2.5 thou clearance is about −35 / +50 % in its flow")]
    public void ClearanceFlow_GoesWithTheCube()
    {
        var gap = Stack.Of([new(1, 2.5, 0.35)]).Worst;
        Outside.Check("flow at the least clearance [%]", -35, 100 * (Math.Pow(gap.Least / 2.5, 3) - 1), 2.5);
        Outside.Check("flow at the greatest clearance [%]", 50, 100 * (Math.Pow(gap.Greatest / 2.5, 3) - 1), 2.5);
    }

    [Fact]
    [CommonPractice("a light-alloy case loses about 1.9 thou of nip on a 3 in bore for a 60 K rise")]
    public void Nip_IsLostHot() =>
        Outside.Check("interference lost for 60 K on 3 in [thou]", 1.9, 3000 * 60 * (Of("cast aluminium") - Of("steel")), 2 * 3000 * 60 * Known("cast aluminium").Expansion.StandardUncertainty);

    [Fact]
    public void Draw_AgreesWithTheClosedForm_WhereItMust() =>
        Terms.Where(terms => terms.Any(t => Math.Abs(t.Coefficient * t.HalfWidth) > 1e-3)).Sample(
            terms =>
            {
                var gap = Stack.Of(terms);
                var sample = Stack.Draw(terms, 20_000, 5);
                Assert.Equal(gap.Nominal, sample.Mean, 5 * gap.StandardDeviation / Math.Sqrt(20_000));
                Assert.Equal(gap.StandardDeviation, sample.StandardDeviation, 0.04 * gap.StandardDeviation);
                if (terms.All(t => t.Spread != Spread.Normal))
                    Assert.True(gap.Worst.Contains(sample.Quantile(1e-6)) && gap.Worst.Contains(sample.Quantile(1 - 1e-6)));
            },
            iter: 40);

    [Fact]
    public void Of_OrderAndUnitDoNotMatter() =>
        Gen.Select(Terms, Gen.Double[1e-3, 1e3]).Sample((terms, scale) =>
        {
            var one = Stack.Of(terms);
            var other = Stack.Of([.. terms.Reverse().Select(t => t with { Nominal = t.Nominal * scale, HalfWidth = t.HalfWidth * scale })]);
            Assert.Equal(one.Nominal * scale, other.Nominal, 1e-11 * scale);
            Assert.Equal(one.WorstHalfWidth * scale, other.WorstHalfWidth, 1e-12 * scale);
            Assert.Equal(one.RootSumSquareHalfWidth * scale, other.RootSumSquareHalfWidth, 1e-12 * scale);
            Assert.Equal(one.StandardDeviation * scale, other.StandardDeviation, 1e-12 * scale);
        });

    [Fact]
    public void Of_TheWorstIsNeverNarrower() =>
        Gen.Select(Terms, Gen.Double[0, 1]).Sample((terms, shift) =>
        {
            var gap = Stack.Of([.. terms.Select(t => t with { MeanShift = shift })]);
            Assert.True(gap.RootSumSquareHalfWidth <= gap.ShiftedHalfWidth + 1e-15);
            Assert.True(gap.ShiftedHalfWidth <= gap.WorstHalfWidth + 1e-12);
            Assert.Equal(1.5 * gap.RootSumSquareHalfWidth, gap.InflatedHalfWidth);
        });

    [Fact]
    public void MeanShift_OfAll_IsTheWorst_OfNone_IsTheRoot()
    {
        StackTerm[] terms = [new(1, 0, 3), new(-1, 0, 4)];
        Assert.Equal(5, Stack.Of(terms).ShiftedHalfWidth, 1e-12);
        Assert.Equal(7, Stack.Of([.. terms.Select(t => t with { MeanShift = 1 })]).ShiftedHalfWidth, 1e-12);
        Assert.Equal(6, Stack.Of([.. terms.Select(t => t with { MeanShift = 0.5 })]).ShiftedHalfWidth, 1e-12);
    }

    [Fact]
    public void Measured_CarriesItsStandardUncertainty()
    {
        var gap = Stack.Of([StackTerm.Measured(1, 0.0318, 3e-6), StackTerm.Measured(-1, 0.0317, 4e-6)]);
        Assert.Equal(5e-6, gap.StandardDeviation, 1e-18);
        Assert.Equal(1e-4, gap.Nominal, 1e-15);
        Assert.Throws<ArgumentOutOfRangeException>(() => Stack.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Stack.Of([new(1, 1, -1)]));
    }

    [Fact]
    public void Within_NoSpread_IsWhetherTheGapFits()
    {
        var gap = Stack.Of([new(1, 2, 0)]);
        Assert.Equal(1, Stack.Within(gap, Interval.AtMost(2), default(Silent)).Within);
        Assert.Equal(1, Stack.Within(gap, Interval.AtLeast(2.1), default(Silent)).Below);
    }

    private static double Of(string material) => Known(material).Expansion.Value;

    private static Material Known(string name) => Materials.TryFind(name, out var material, out _) ? material : throw new InvalidOperationException(name);

    private static IEnumerable<(ReferenceTable.Row Row, StackTerm[] Terms)> LinearCases() =>
        ReferenceTable.Read("c07-stacks.csv").Where(row => row["kind"] == "linear").Select(row => (row, Contributors(row["stack_id"]).Select(c => new StackTerm(c.Coefficient!.Value, c.Nominal, c.HalfWidth, Enum.Parse<Spread>(c.Distribution, ignoreCase: true))).ToArray()));

    private static Draw AsDraw(Contributor c) => c.Distribution switch
    {
        "normal" => Draw.Normal(c.Nominal, c.HalfWidth / 3),
        "rectangular" => Draw.Rectangular(c.Nominal, c.HalfWidth),
        _ => Draw.Triangular(c.Nominal, c.HalfWidth),
    };

    private static IReadOnlyList<Contributor> Contributors(string id)
    {
        using var file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "reference", "c07-stacks.json"));
        var cases = JsonSerializer.Deserialize<Cases>(file, Options)!;
        return cases.Stacks.Single(one => one.Id == id).C;
    }

    private static readonly JsonSerializerOptions Options = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private sealed record Cases(IReadOnlyList<Case> Stacks);

    private sealed record Case(string Id, IReadOnlyList<Contributor> C);

    private sealed record Contributor(string Name, double? Coefficient, double Nominal, double HalfWidth, string Distribution);
}
