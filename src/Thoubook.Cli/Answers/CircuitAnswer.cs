using Thoubook.Appraisal.Oil;

namespace Thoubook.Cli.Answers;

/// <param name="Nodes">[Pa] gauge pressure of each node, by name.</param>
/// <param name="Elements">[m³/s] flow of each element, by name, positive from its first node to its second.</param>
/// <param name="Viscosity">[Pa·s]</param>
/// <param name="Density">[kg/m³]</param>
/// <param name="HowSolved">In a sentence.</param>
internal sealed record CircuitAnswer(IReadOnlyDictionary<string, double> Nodes, IReadOnlyDictionary<string, double> Elements, double Viscosity, double Density, string HowSolved, IReadOnlyList<string> Cautions)
{
    public static CircuitAnswer Of(OilAnswer answer) => new(
        answer.Nodes.ToDictionary(n => n.Name.Text, n => n.Pressure),
        answer.Elements.ToDictionary(e => e.Element.Name.Text, e => e.Flow),
        answer.Viscosity,
        answer.Density,
        answer.HowSolved,
        [.. answer.Cautions.Select(c => c.Text)]);
}
