using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class UncertaintyBudgetTests
{
    [Fact]
    public void Of_EndGaugeCalibration_AgreesWithTheGuide()
    {
        var gauge = new WorkedExample("U2");
        UncertaintyBudget.Part[] parts =
        [
            new("standard", gauge.Input("u_ls"), 1, 1, gauge.Input("dof_ls")),
            new("readings of the comparator", gauge.Input("u_d_readings"), 1, 1, gauge.Input("dof_d_readings")),
            new("comparator, random", gauge.Input("u_comparator_random"), 1, 1, gauge.Input("dof_comparator_random")),
            new("comparator, systematic", gauge.Input("u_comparator_systematic"), 1, 1, gauge.Input("dof_comparator_systematic")),
            new("difference of expansion", gauge.Input("delta_alpha_half_width_rectangular"), Math.Sqrt(3), -gauge.Input("ls") * gauge.Input("theta_mean"), gauge.Input("dof_delta_alpha")),
            new("difference of temperature", gauge.Input("delta_theta_half_width_rectangular"), Math.Sqrt(3), -gauge.Input("ls") * gauge.Input("alpha_s"), gauge.Input("dof_delta_theta")),
        ];
        var budget = UncertaintyBudget.Of([], parts, 0.99, default(Silent));
        gauge.Check("combined_standard_uncertainty", budget.StandardUncertainty);
        gauge.Check("effective_degrees_of_freedom (truncate)", Math.Floor(budget.DegreesOfFreedom));
    }

    [Fact]
    public void Of_ReadingsAlone_IsTheScatterOfTheMean()
    {
        var budget = UncertaintyBudget.Of([1.0, 2.0, 3.0, 4.0], [], 0.95, default(Silent));
        Assert.Equal(Math.Sqrt(5.0 / 3) / 2, budget.StandardUncertainty, 1e-14);
        Assert.Equal(3, budget.DegreesOfFreedom, 1e-12);
        Assert.Equal(budget.StandardUncertainty * StudentT.Quantile(0.975, 3), budget.Expanded, 1e-12);
    }

    [Fact]
    public void Of_OneSourceTwice_AddsBeforeSquaring()
    {
        UncertaintyBudget.Part one = new("gauge", 3, 1, 1, double.PositiveInfinity);
        var sameSign = UncertaintyBudget.Of([], [one, one with { Quantity = 4 }], 0.95, default(Silent));
        var opposite = UncertaintyBudget.Of([], [one, one with { Quantity = 4, Sensitivity = -1 }], 0.95, default(Silent));
        var independent = UncertaintyBudget.Of([], [one, one with { Quantity = 4, Source = "other" }], 0.95, default(Silent));
        Assert.Equal(7, sameSign.StandardUncertainty, 1e-13);
        Assert.Equal(1, opposite.StandardUncertainty, 1e-13);
        Assert.Equal(5, independent.StandardUncertainty, 1e-13);
        Assert.Equal(double.PositiveInfinity, independent.DegreesOfFreedom);
        Assert.Equal(5 * 1.959963984540054, independent.Expanded, 1e-12);
    }

    [Fact]
    public void Of_OneReading_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => UncertaintyBudget.Of([1.0], [], 0.95, default(Silent)));
}
