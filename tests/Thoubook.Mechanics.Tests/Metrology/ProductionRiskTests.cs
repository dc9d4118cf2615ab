using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

public sealed class ProductionRiskTests
{
    [Fact]
    public void Of_AgreesWithTheGuide()
    {
        var resistors = new WorkedExample("U12");
        var (mean, deviation, u) = (resistors.Input("process_mean"), resistors.Input("process_sd"), resistors.Input("u_measurement"));
        var limits = Interval.Between(resistors.Input("T_L"), resistors.Input("T_U"));
        var guarded = ProductionRisk.Of(mean, deviation, u, limits, Interval.Between(resistors.Input("A_L"), resistors.Input("A_U")));
        resistors.Check("global_consumer_risk", guarded.Consumer, 2e-6);
        resistors.Check("global_producer_risk", guarded.Producer, 2e-6);
        resistors.Check("process_conformance_probability", guarded.Conforming);
        var plain = ProductionRisk.Of(mean, deviation, u, limits, limits);
        resistors.Check("global_consumer_risk without guard band", plain.Consumer, 2e-6);
        resistors.Check("global_producer_risk without guard band", plain.Producer, 2e-6);
    }

    [Fact]
    public void Of_AgreesWithQuadrature()
    {
        foreach (var row in ReferenceTable.Read("c07-global-risk.csv"))
        {
            var limits = Interval.Between(row.NumberOrNone("lower_tolerance_limit") ?? double.NegativeInfinity, row.NumberOrNone("upper_tolerance_limit") ?? double.PositiveInfinity);
            var u = row.Number("measurement_standard_uncertainty");
            var zone = DecisionRule.GuardBanded(limits, u, row.Number("guard_band_factor_r_dimless"))!.Value;
            var risk = ProductionRisk.Of(row.Number("process_mean"), row.Number("process_std"), u, limits, zone);
            Check("conforming", "p_process_conform_dimless", risk.Conforming);
            Check("accepted", "p_accept_dimless", risk.Accepted);
            Check("consumer's risk", "global_consumer_risk_dimless", risk.Consumer);
            Check("producer's risk", "global_producer_risk_dimless", risk.Producer);
            Check("consumer's risk among accepted", "conditional_consumer_risk_given_accept_dimless", risk.ConsumerAmongAccepted);

            void Check(string what, string head, double got) =>
                Outside.Check($"production {row["case_id"]}: {what}", row.Number(head), got, 5.1e-8, "adaptive quadrature of the joint density, closure 1e-13; printed to six digits", "computed");
        }
    }
}
