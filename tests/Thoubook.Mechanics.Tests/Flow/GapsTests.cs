using CsCheck;
using Thoubook.Mechanics.Flow;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class GapsTests
{
    private const double Pressure = 4e5;
    private const double Viscosity = 0.012;

    [Theory]
    [InlineData(0, 0.15422)]
    [InlineData(0.3, 0.17504)]
    [InlineData(0.6, 0.23750)]
    [InlineData(0.8, 0.30228)]
    [InlineData(0.9, 0.34161)]
    [Computed("pressure-fed bearing, two lands of 11 mm, 60 mm, 30 µm radial, 4 bar, 12 mPa s; mean of the gap cubed by quadrature")]
    public void GroovedBearing_AgreesWithTheWorkedFigures(double eccentricity, double litresPerMinute) =>
        Outside.Check($"flow of a grooved bearing, eccentricity {eccentricity} [L/min]", litresPerMinute, PerMinute(Gaps.GroovedBearing(0.06, 60e-6, 0.011, 2, eccentricity)), 6e-6);

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.6, 1.38879)]
    [InlineData(0.8, 1.85259)]
    [Computed("half groove at the widest gap against the full groove without eccentricity, by quadrature of the gap cubed")]
    public void HalfGroovedBearing_AgreesWithTheQuadrature(double eccentricity, double expected) =>
        Outside.Check($"half groove over full, eccentricity {eccentricity}", expected, Gaps.HalfGroovedBearing(0.06, 60e-6, 0.011, 2, eccentricity) / Gaps.GroovedBearing(0.06, 60e-6, 0.011, 2, 0), 6e-6);

    /// <summary>The two halves, one at the widest and one at the narrowest gap, make the whole.</summary>
    [Fact]
    public void TwoHalves_MakeTheWhole() =>
        Gen.Double[0, 1].Sample(e =>
        {
            // The narrow half is the same integral with the eccentricity turned round: even terms stay, odd terms change sign.
            var wide = Gaps.HalfGroovedBearing(0.05, 6e-5, 0.01, 2, e) / Gaps.GroovedBearing(0.05, 6e-5, 0.01, 2, 0);
            var narrow = 0.0;
            const int steps = 2000;
            for (var i = 0; i < steps; i++)
                narrow += Math.Pow(1 - (e * Math.Cos(Math.PI * (((i + 0.5) / steps) - 0.5))), 3) / (2.0 * steps);
            Assert.Equal(1 + (1.5 * e * e), wide + narrow, 1e-5);
        });

    [Theory]
    [InlineData(0, 0.62832)]
    [InlineData(1, 1.57080)]
    [Computed("laminar annulus, 10 mm, 20 µm radial, 50 mm, 3 bar, 12 mPa s")]
    public void Annulus_AgreesWithTheWorkedFigures(double eccentricity, double millilitresPerMinute) =>
        Outside.Check($"flow of an annulus, eccentricity {eccentricity} [mL/min]", millilitresPerMinute, 6e7 * Gaps.Annulus(0.01, 40e-6, 0.05, eccentricity) * 3e5 / 0.012, 6e-6);

    /// <summary>The formula lies within 1.5 % of the field solved over the whole film; the table is for a gap that is the same everywhere.</summary>
    [Theory]
    [InlineData(0.05, 0.1596)]
    [InlineData(0.10, 0.2029)]
    [InlineData(0.15, 0.2426)]
    [InlineData(0.20, 0.2803)]
    [InlineData(0.30, 0.3594)]
    [Computed("Reynolds equation by finite differences, hole in a bearing with a flat film")]
    public void HoleFedBearing_AgreesWithTheField(double holeOverWidth, double expected) =>
        Outside.CheckRelative($"share of a hole of {holeOverWidth} of the width", expected, Gaps.HoleFedBearing(2, 1, holeOverWidth, 0, 0), 0.015);

    [Theory]
    [InlineData(0, 0.016116)]
    [InlineData(0.6, 0.066009)]
    [FromMemory("Martin and Lee, ASLE Trans. 26 (1983) 381; their formula, 5 mm hole, 22 mm wide, 30 µm radial, 4 bar, 12 mPa s")]
    public void HoleFedBearing_AgreesWithTheOtherFormula(double eccentricity, double litresPerMinute) =>
        Outside.CheckRelative($"flow of a hole-fed bearing, eccentricity {eccentricity} [L/min]", litresPerMinute, PerMinute(Gaps.HoleFedBearing(60e-6, 0.022, 0.005, 0, eccentricity)), 0.05);

    [Fact]
    public void HoleFedBearing_GoesWithTheGapAtTheHole() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[-3, 3]).Sample((e, angle) =>
            Assert.Equal(Math.Pow(1 + (e * Math.Cos(angle)), 3), Gaps.HoleFedBearing(6e-5, 0.02, 0.004, angle, e) / Gaps.HoleFedBearing(6e-5, 0.02, 0.004, 0, 0), 1e-9));

    [Fact]
    [CommonPractice("0.35 thou either way on a clearance of 2.5 thou is about −35 / +50 % in its flow")]
    public void Flow_GoesWithTheCubeOfTheClearance()
    {
        var flow = Gaps.GroovedBearing(0.06, 2.5 * 25.4e-6, 0.011, 2, 0.6);
        Outside.Check("flow lost by 0.35 thou less of 2.5 [%]", -35, 100 * ((Gaps.GroovedBearing(0.06, 2.15 * 25.4e-6, 0.011, 2, 0.6) / flow) - 1), 2);
        Outside.Check("flow gained by 0.35 thou more of 2.5 [%]", 50, 100 * ((Gaps.GroovedBearing(0.06, 2.85 * 25.4e-6, 0.011, 2, 0.6) / flow) - 1), 2);
    }

    [Fact]
    [CommonPractice("twice the gap leaks eight times as much; all on one side four times what it leaks centred")]
    public void Slot_GoesWithTheCubeOfTheGap()
    {
        var narrow = Gaps.Slot(0.02, 25e-6, 0.005);
        Outside.CheckRelative("flow of twice the gap over the flow of the gap", 8, Gaps.Slot(0.02, 50e-6, 0.005) / narrow, 1e-12);
        Outside.CheckRelative("flow of a float on one side over the flow centred", 4, Gaps.Slot(0.02, 50e-6, 0.005) / (2 * narrow), 1e-12);
    }

    [Fact]
    public void Slot_IsAnAnnulusUnrolled() =>
        Assert.Equal(Gaps.Slot(Math.PI * 0.05, 4e-5, 0.01), Gaps.Annulus(0.05, 8e-5, 0.01, 0), 1e-25);

    [Theory]
    [InlineData(0.05, 0.06, 0.01, 2, 0)]
    [InlineData(0, 1e-5, 0.01, 2, 0)]
    [InlineData(0.05, -1e-5, 0.01, 2, 0)]
    [InlineData(0.05, 1e-5, 0, 2, 0)]
    [InlineData(0.05, 1e-5, 0.01, 3, 0)]
    [InlineData(0.05, 1e-5, 0.01, 2, 1.1)]
    public void GroovedBearing_Unphysical_IsRefused(double diameter, double clearance, double land, double lands, double eccentricity)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Gaps.GroovedBearing(diameter, clearance, land, lands, eccentricity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gaps.HalfGroovedBearing(diameter, clearance, land, lands, eccentricity));
        if (lands <= 2)
            Assert.Throws<ArgumentOutOfRangeException>(() => Gaps.Annulus(diameter, clearance, land, eccentricity));
    }

    [Theory]
    [InlineData(-1e-5, 0.02, 0.004, 0)]
    [InlineData(1e-5, 0.02, 0.017, 0)]
    [InlineData(1e-5, 0.02, 0, 0)]
    [InlineData(1e-5, 0, 0.004, 0)]
    [InlineData(1e-5, 0.02, 0.004, -0.1)]
    public void HoleFedBearing_Unphysical_IsRefused(double clearance, double width, double hole, double eccentricity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Gaps.HoleFedBearing(clearance, width, hole, 0, eccentricity));

    [Theory]
    [InlineData(0, 1e-5, 0.01)]
    [InlineData(0.01, -1e-5, 0.01)]
    [InlineData(0.01, 1e-5, 0)]
    public void Slot_Unphysical_IsRefused(double width, double gap, double length) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Gaps.Slot(width, gap, length));

    private static double PerMinute(double conductance) => 60000 * conductance * Pressure / Viscosity;
}
