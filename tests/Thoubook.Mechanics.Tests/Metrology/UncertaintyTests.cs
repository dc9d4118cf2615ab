using CsCheck;
using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class UncertaintyTests
{
    private static readonly WorkedExample EndGauge = new("U2");

    [Fact]
    public void RectangularAndTriangular_AgreeWithTheGuide()
    {
        var temperature = new WorkedExample("U1");
        temperature.Check("rectangular_96_to_104: standard uncertainty 4/sqrt(3)", Uncertainty.Rectangular(4));
        temperature.Check("triangular_96_to_104: standard uncertainty 4/sqrt(6)", Uncertainty.Triangular(4));
        EndGauge.Check("u_theta", Uncertainty.Combined([EndGauge.Input("u_theta_mean"), Uncertainty.Arcsine(EndGauge.Input("theta_cycle_half_width_arcsine"))]));
    }

    [Theory]
    [InlineData(0.025, 0.0072)]
    [InlineData(0.05, 0.0144)]
    [InlineData(0.10, 0.0289)]
    [CommonPractice("shims of stepped thickness: error within ± half a step, standard uncertainty step/√12")]
    public void Resolution_AgreesWithShimPractice(double step, double expected) =>
        Outside.Check($"standard uncertainty of a {step} mm step", expected, Uncertainty.Resolution(step), 5e-5);

    [Fact]
    public void EndGaugeCalibration_AgreesWithTheGuide()
    {
        var length = EndGauge.Input("ls");
        double[] comparator = [EndGauge.Input("u_d_readings"), EndGauge.Input("u_comparator_random"), EndGauge.Input("u_comparator_systematic")];
        double[] comparatorDegrees = [EndGauge.Input("dof_d_readings"), EndGauge.Input("dof_comparator_random"), EndGauge.Input("dof_comparator_systematic")];
        var uD = Uncertainty.Combined(comparator);
        var nuD = Uncertainty.EffectiveDegreesOfFreedom(comparator, comparatorDegrees);
        EndGauge.Check("u_d", uD);
        EndGauge.Check("dof_d", nuD);

        var uDeltaAlpha = Uncertainty.Rectangular(EndGauge.Input("delta_alpha_half_width_rectangular"));
        var uDeltaTheta = Uncertainty.Rectangular(EndGauge.Input("delta_theta_half_width_rectangular"));
        var fromDeltaAlpha = -length * EndGauge.Input("theta_mean") * uDeltaAlpha;
        var fromDeltaTheta = -length * EndGauge.Input("alpha_s") * uDeltaTheta;
        EndGauge.Check("contribution_delta_alpha", Math.Abs(fromDeltaAlpha));
        EndGauge.Check("contribution_delta_theta", Math.Abs(fromDeltaTheta));

        double[] contributions = [EndGauge.Input("u_ls"), uD, fromDeltaAlpha, fromDeltaTheta];
        var u = Uncertainty.Combined(contributions);
        var nu = Uncertainty.EffectiveDegreesOfFreedom(contributions, [EndGauge.Input("dof_ls"), nuD, EndGauge.Input("dof_delta_alpha"), EndGauge.Input("dof_delta_theta")]);
        EndGauge.Check("combined_standard_uncertainty", u);
        EndGauge.Check("combined_variance", u * u);
        EndGauge.Check("effective_degrees_of_freedom (truncate)", Math.Floor(nu));
        EndGauge.Check("t_99 (16)", Uncertainty.CoverageFactor(0.99, 16));
        EndGauge.Check("expanded_uncertainty_99", Uncertainty.Expanded(u, 0.99, Math.Floor(nu)));

        var uTheta = Uncertainty.Combined([EndGauge.Input("u_theta_mean"), Uncertainty.Arcsine(EndGauge.Input("theta_cycle_half_width_arcsine"))]);
        var first = length * uDeltaAlpha * uTheta;
        var second = length * Uncertainty.Rectangular(EndGauge.Input("alpha_s_half_width_rectangular")) * uDeltaTheta;
        EndGauge.Check("second_order_term delta_alpha x theta", first);
        EndGauge.Check("second_order_term alpha_s x delta_theta", second);
        EndGauge.Check("combined_standard_uncertainty_with_second_order_terms", Uncertainty.Combined([.. contributions, first, second]));
    }

    [Fact]
    public void CorrelatedInputs_AgreeWithTheGuide()
    {
        // Resistance, reactance and impedance from voltage, current and phase read together five times.
        var example = new WorkedExample("U3");
        double[][] readings = [example.Inputs("V"), [.. example.Inputs("I").Select(i => i / 1000)], example.Inputs("phi")];
        var summaries = readings.Select(one => Readings.Summarise(one)).ToArray();
        var (v, i, phi) = (summaries[0].Mean, summaries[1].Mean, summaries[2].Mean);
        var correlations = new double[9];
        for (var row = 0; row < 3; row++)
        {
            for (var column = 0; column < 3; column++)
                correlations[(row * 3) + column] = row == column ? 1 : Correlation(row, column);
        }

        example.Check("r_V_I", correlations[1]);
        example.Check("r_V_phi", correlations[2]);
        example.Check("r_I_phi", correlations[5]);
        var z = v / i;
        Check("R", z * Math.Cos(phi), [Math.Cos(phi) / i, -z * Math.Cos(phi) / i, -z * Math.Sin(phi)]);
        Check("X", z * Math.Sin(phi), [Math.Sin(phi) / i, -z * Math.Sin(phi) / i, z * Math.Cos(phi)]);
        Check("Z", z, [1 / i, -z / i, 0]);

        void Check(string letter, double value, double[] slopes)
        {
            example.Check(letter, value);
            example.Check($"u_{letter}", Uncertainty.Combined([.. slopes.Select((slope, j) => slope * summaries[j].StandardUncertaintyOfMean)], correlations), 2e-6);
        }

        double Correlation(int a, int b) =>
            readings[a].Zip(readings[b], (x, y) => (x - summaries[a].Mean) * (y - summaries[b].Mean)).Sum() / ((readings[a].Length - 1) * summaries[a].Scatter * summaries[b].Scatter);
    }

    [Fact]
    public void CalibrationLine_CorrelatedEndsCombineAsInTheGuide()
    {
        // b(30 °C) = y1 + 10 y2; intercept and slope as the guide's fit gives them.
        var row = new WorkedExample("U4");
        row.Check("correction_at_30C", -0.1712038 + (10 * 0.002182698), 2e-6);
        row.Check("u_correction_at_30C", Uncertainty.Combined([0.002877598, 10 * 0.0006679388], [1, -0.9304296, -0.9304296, 1]), 2e-6);
    }

    [Fact]
    public void Combined_OneGauge_IsOneError()
    {
        Contribution[] bore = [new("bore gauge", 3e-6), new("repeatability of the bore", 1e-6)];
        Contribution[] other = [new("bore gauge", 3e-6), new("repeatability of the other bore", 1e-6)];
        Contribution[] difference = [.. bore, .. other.Select(c => c with { Amount = -c.Amount })];
        Assert.Equal(Math.Sqrt(2) * 1e-6, Uncertainty.Combined(difference), 1e-15);
        Assert.Equal(0.9, Uncertainty.Correlation(bore, other), 1e-12);
        Assert.Equal(-0.9, Uncertainty.Correlation(bore, [.. other.Select(c => c with { Amount = -c.Amount })]), 1e-12);
        Assert.Equal(0, Uncertainty.Correlation(bore, [new("micrometer", 2e-6)]));
        Assert.Equal(0, Uncertainty.Correlation(bore, []));
    }

    [Fact]
    public void Combined_TheThreeWays_Agree() =>
        Gen.Double[-1, 1].Array[1, 8].Sample(amounts =>
        {
            var n = amounts.Length;
            var identity = new double[n * n];
            for (var i = 0; i < n; i++)
                identity[i * (n + 1)] = 1;
            var plain = Uncertainty.Combined(amounts);
            Assert.Equal(plain, Uncertainty.Combined(amounts, identity), 1e-14);
            Assert.Equal(plain, Uncertainty.Combined(amounts.Select((amount, i) => new Contribution($"source {i}", amount))), 1e-14);
            Assert.Equal(Math.Abs(amounts.Sum()), Uncertainty.Combined(amounts.Select(amount => new Contribution("one", amount))), 1e-14);
            Assert.Equal(Math.Abs(amounts.Sum()), Uncertainty.Combined(amounts, [.. Enumerable.Repeat(1.0, n * n)]), 1e-7);
        });

    [Fact]
    public void EffectiveDegreesOfFreedom_LieBetweenTheLeastAndTheSum() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[1, 50]).Array[1, 8].Sample(sources =>
        {
            var nu = Uncertainty.EffectiveDegreesOfFreedom([.. sources.Select(s => s.Item1)], [.. sources.Select(s => s.Item2)]);
            Assert.InRange(nu, sources.Min(s => s.Item2) * (1 - 1e-12), sources.Sum(s => s.Item2) * (1 + 1e-12));
        });

    [Fact]
    public void EffectiveDegreesOfFreedom_EverythingKnown_IsInfinite()
    {
        Assert.Equal(double.PositiveInfinity, Uncertainty.EffectiveDegreesOfFreedom([1, 2], [double.PositiveInfinity, double.PositiveInfinity]));
        Assert.Equal(double.PositiveInfinity, Uncertainty.EffectiveDegreesOfFreedom([0, 0], [3, 3]));
        Assert.Equal(5, Uncertainty.EffectiveDegreesOfFreedom([2, 0], [5, 1]), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertainty.EffectiveDegreesOfFreedom([1], [0]));
    }
}
