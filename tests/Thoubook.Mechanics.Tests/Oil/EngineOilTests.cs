using CsCheck;
using Thoubook.Mechanics.Oil;

namespace Thoubook.Mechanics.Tests.Oil;

public sealed class EngineOilTests
{
    private const double At100 = 373.15;
    private const double At40 = 313.15;

    private static readonly IReadOnlyList<ReferenceTable.Row> Grades = ReferenceTable.Read("lubrication/oil-grades.csv");

    [Fact]
    public void StraightGrade_LiesInTheMiddleOfItsLimits()
    {
        foreach (var row in Grades.Where(row => row["system"] == "SAE_J300" && !row["grade"].EndsWith('W') && row["ccs_max_mPa_s"].Length == 0).DistinctBy(row => row["grade"]))
        {
            var (least, greatest) = (row.Number("kv100_min_mm2_s"), row.Number("kv100_max_exclusive_mm2_s"));
            row.Check($"SAE {row["grade"]}, middle of its viscosity at 100 °C [mm²/s]", 0.5 * (least + greatest), 1e6 * Grade($"SAE {row["grade"]}").KinematicViscosity(At100), 1e-4);

            // The band is rectangular: half its width over √3, as a share.
            var share = (greatest - least) / Math.Sqrt(12) / (0.5 * (least + greatest));
            Assert.Equal(share, Grade($"SAE {row["grade"]}").ViscosityUncertainty(At100), 0.05 * share);
        }
    }

    [Fact]
    public void IndustrialGrade_LiesInTheMiddleOfItsLimits()
    {
        foreach (var row in Grades.Where(row => row["system"] == "ISO_3448" && row.Number("kv40_mid_mm2_s") >= 10))
        {
            var oil = Grade($"ISO {row["grade"]}");
            row.Check($"ISO {row["grade"]}, viscosity at 40 °C [mm²/s]", row.Number("kv40_mid_mm2_s"), 1e6 * oil.KinematicViscosity(At40), 1e-6 * row.Number("kv40_mid_mm2_s"));

            // Limits 10 % either way, rectangular.
            Assert.Equal(0.1 / Math.Sqrt(3), oil.ViscosityUncertainty(At40), 5e-4);
            Assert.Equal(95, ViscosityIndex.Of(oil.KinematicViscosity(At40), oil.KinematicViscosity(At100)), 1e-3);
        }
    }

    [Fact]
    public void AviationGrade_IsThatOfTheSameNumberOfTheSae()
    {
        foreach (var row in Grades.Where(row => row["system"] == "SAE_J1966_J1899"))
        {
            var names = row["grade"].Split(' ', '(', ')', ';');
            var commercial = row.Number("sus_min_s");
            var oil = Grade($"aviation {commercial}");
            row.Check($"aviation {commercial}, middle of its viscosity at 100 °C [mm²/s]", 0.5 * (row.Number("kv100_min_mm2_s") + row.Number("kv100_max_exclusive_mm2_s")), 1e6 * oil.KinematicViscosity(At100), 1e-4);
            Assert.Equal(Grade($"SAE {names[1]}").KinematicViscosity(300), oil.KinematicViscosity(300));
            Assert.Equal(oil.KinematicViscosity(300), Grade($"aviation {names[4]}").KinematicViscosity(300));
        }
    }

    /// <summary>Cranking viscosity and viscosity at 100 °C both keep within the grade's limits, as a real oil must.</summary>
    [Fact]
    public void Multigrade_KeepsWithinBothItsLimits()
    {
        var seen = 0;
        foreach (var winter in Grades.Where(row => row["system"] == "SAE_J300" && row["grade"].EndsWith('W')))
        {
            foreach (var hot in Grades.Where(row => row["system"] == "SAE_J300" && !row["grade"].EndsWith('W')).DistinctBy(row => row["grade"]))
            {
                if (!EngineOil.TryGrade($"SAE {winter["grade"]}-{hot["grade"]}", out var oil, out _))
                    continue;
                seen++;
                var (least, greatest) = (Math.Max(hot.Number("kv100_min_mm2_s"), winter.Number("kv100_min_mm2_s")), hot.Number("kv100_max_exclusive_mm2_s"));
                winter.Check($"SAE {winter["grade"]}-{hot["grade"]}, viscosity at 100 °C [mm²/s]", 0.5 * (least + greatest), 1e6 * oil.KinematicViscosity(At100), 1e-4);
                var cold = 273.15 + winter.Number("ccs_temp_degC");
                Assert.InRange(1e3 * oil.KinematicViscosity(cold) * oil.Density(cold), 0.8 * winter.Number("ccs_max_mPa_s"), winter.Number("ccs_max_mPa_s"));
                Assert.Null(oil.Remark(cold));
                Assert.NotNull(oil.Remark(cold - 1));
                Assert.Equal(0.9, oil.ShearFactor);
            }
        }

        Assert.Equal((5 * 6) + 4, seen);

    }

    [Theory]
    [InlineData("15W-40", 105, 7)]
    [InlineData("20W-50", 165, 12)]
    [InlineData("10W-30", 70, 6)]
    [InlineData("5W-30", 64, 8)]
    [CommonPractice("typical viscosities at 40 °C of multigrade engine oils")]
    public void Multigrade_At40_IsAsUsual(string grade, double expected, double tolerance) =>
        Outside.Check($"SAE {grade} at 40 °C [mm²/s]", expected, 1e6 * Grade(grade).KinematicViscosity(At40), tolerance);

    [Theory]
    [InlineData("SAE 30", 100, 12)]
    [InlineData("SAE 40", 148, 16)]
    [InlineData("SAE 50", 230, 22)]
    [CommonPractice("typical viscosities at 40 °C of straight mineral engine oils")]
    public void StraightGrade_At40_IsAsUsual(string grade, double expected, double tolerance) =>
        Outside.Check($"{grade} at 40 °C [mm²/s]", expected, 1e6 * Grade(grade).KinematicViscosity(At40), tolerance);

    /// <summary>What a full rate of shear leaves of a multigrade may not lie far below the stated factor.</summary>
    [Fact]
    public void Multigrade_SheredAt150_IsNotBelowItsLimit()
    {
        foreach (var row in Grades.Where(row => row["system"] == "SAE_J300" && row["hths150_min_mPa_s"] == "3.7" && row["grade"] != "60"))
        {
            var oil = Grade($"20W-{row["grade"]}");
            Assert.InRange(1e3 * oil.DynamicViscosity(423.15), row.Number("hths150_min_mPa_s"), 2 * row.Number("hths150_min_mPa_s"));
        }
    }

    [Fact]
    public void FromTwoPoints_GoesThroughThem()
    {
        var oil = EngineOil.FromTwoPoints(At40, 140e-6, At100, 14.2e-6, "as tested", 0.01).WithDensity(892);
        Assert.Equal("as tested", oil.Name);
        Assert.Equal(140e-6, oil.KinematicViscosity(At40), 1e-12);
        Assert.Equal(14.2e-6, oil.KinematicViscosity(At100), 1e-12);
        Assert.Equal(OilProperties.Density(892, 350), oil.Density(350));
        Assert.Equal(oil.KinematicViscosity(350) * oil.Density(350), oil.DynamicViscosity(350), 1e-12);
        Assert.Equal(OilProperties.HeatCapacity(892, 350), oil.HeatCapacity(350));
        Assert.Equal(OilProperties.Conductivity(892, 350), oil.Conductivity(350));
        Assert.Equal(0.01, oil.ViscosityUncertainty(350), 1e-12);
        Assert.Equal(0.02, EngineOil.FromTwoPoints(At40, 140e-6, At100, 14.2e-6).ViscosityUncertainty(350), 1e-12);
        Assert.Throws<ArgumentException>(() => EngineOil.FromTwoPoints(At40, 14e-6, At100, 140e-6));
        Assert.Throws<ArgumentOutOfRangeException>(() => oil.WithDensity(500));
        Assert.Throws<ArgumentOutOfRangeException>(() => oil.WithShearFactor(1.1));
    }

    [Fact]
    public void ShearFactor_WhereStated_LeavesNoDoubtOfItsOwn()
    {
        var assumed = Grade("15W-40");
        var stated = assumed.WithShearFactor(0.8);
        Assert.Equal(0.8 / 0.9, stated.DynamicViscosity(370) / assumed.DynamicViscosity(370), 1e-12);
        Assert.Equal(assumed.KinematicViscosity(370), stated.KinematicViscosity(370));
        var own = Math.Log(1 / 0.8) / Math.Sqrt(12);
        Assert.Equal(own * own, Math.Pow(assumed.ViscosityUncertainty(370), 2) - Math.Pow(stated.ViscosityUncertainty(370), 2), 1e-12);
        Assert.Equal(1, Grade("SAE 40").ShearFactor);
    }

    [Fact]
    public void ViscosityUncertainty_GrowsTowardsTheCold()
    {
        var oil = Grade("SAE 40");
        Assert.InRange(oil.ViscosityUncertainty(At100), 0.076, 0.077);
        Assert.InRange(oil.ViscosityUncertainty(At40), 0.10, 0.14);
        Assert.True(oil.ViscosityUncertainty(273.15) > oil.ViscosityUncertainty(At40));
    }

    [Fact]
    public void ViscosityUncertainty_HasAPartForEachDoubt()
    {
        // A straight oil at 40 °C: the limits of its grade, and an index from 85 to 105.
        var (limits, index) = (Log(At(95, 16.3) / At(95, 12.5)), Log(At(85, 14.4) / At(105, 14.4)));
        Assert.Equal(Math.Sqrt(((limits * limits) + (index * index)) / 12), Grade("SAE 40").ViscosityUncertainty(At40), 1e-6);

        // A multigrade where it is cranked: from 0.6 to 1.1 of the limit there, and a shear factor from 0.8 to 1.
        var (cranking, shear) = (Log(1.1 / 0.6), Log(1 / 0.8));
        Assert.Equal(Math.Sqrt(((cranking * cranking) + (shear * shear)) / 12), Grade("15W-40").ViscosityUncertainty(253.15), 1e-6);

        static double Log(double ratio) => Math.Log(ratio);
        static double At(double index, double hot) => ViscosityIndex.ViscosityAt40(index, 1e-6 * hot);
    }

    [Theory]
    [InlineData("sae40", "SAE 40")]
    [InlineData("SAE-40", "SAE 40")]
    [InlineData("15w/40", "SAE 15W-40")]
    [InlineData("SAE 20W50", "SAE 20W-50")]
    [InlineData("iso vg46", "ISO VG 46")]
    [InlineData("VG 100", "ISO VG 100")]
    [InlineData("Aviation 1100", "aviation 1100")]
    public void TryGrade_TakesWhatIsWritten(string written, string name)
    {
        Assert.True(EngineOil.TryGrade(written, out var oil, out var nearest));
        Assert.Equal(name, oil.Name);
        Assert.Empty(nearest);
    }

    [Theory]
    [InlineData("SAE 45", "SAE 40")]
    [InlineData("SAE 15W-45", "SAE 15W-40")]
    [InlineData("ISO VG 45", "ISO VG 46")]
    [InlineData("aviaton 80", "aviation 80")]
    public void TryGrade_UnknownGrade_NamesTheNearest(string written, string expected)
    {
        Assert.False(EngineOil.TryGrade(written, out var oil, out var nearest));
        Assert.Null(oil);
        Assert.Contains(expected, nearest);
    }

    [Fact]
    public void Grades_AreKnownByTheirNames_EachOnce()
    {
        Assert.Equal(EngineOil.Grades.Count, EngineOil.Grades.Distinct().Count());
        Assert.All(EngineOil.Grades, name => Assert.Equal(name, Grade(name).Name));
        Assert.Equal(8 + 34 + 16 + 8, EngineOil.Grades.Count);
    }

    [Fact]
    public void Remark_SpeaksOnlyOutsideTheRange()
    {
        var oil = Grade("SAE 40");
        Assert.Equal("−10 °C to 150 °C", oil.Range);
        Assert.Null(oil.Remark(263.15));
        Assert.Null(oil.Remark(423.15));
        Assert.Contains("−10 °C", oil.Remark(263), StringComparison.Ordinal);
        Assert.Contains("150 °C", oil.Remark(424), StringComparison.Ordinal);
        Assert.Contains("−70 °C", oil.Remark(200), StringComparison.Ordinal);
        Assert.Contains("370 °C", oil.Remark(double.NaN), StringComparison.Ordinal);
        Assert.Equal("−25 °C to 150 °C", Grade("10W-40").Range);
    }

    [Fact]
    public void EveryGrade_HasBelievableFigures() =>
        // From −10 °C, where the figures of every straight oil begin to hold; the heaviest are all but solid further down.
        Gen.Select(Gen.Int[0, EngineOil.Grades.Count - 1], Gen.Double[263.15, 423.15]).Sample((which, temperature) =>
        {
            var oil = Grade(EngineOil.Grades[which]);
            Assert.InRange(oil.KinematicViscosity(temperature), 1e-6, 20);
            Assert.InRange(oil.ViscosityUncertainty(temperature), 0.02, 0.8);
        });

    private static EngineOil Grade(string name)
    {
        Assert.True(EngineOil.TryGrade(name, out var oil, out var nearest), $"{name}: {string.Join(", ", nearest)}");
        return oil;
    }
}
