namespace Thoubook.Web.Writing;

/// <summary>What drawing a fit many times over at random found, on request.</summary>
/// <param name="Draws">How many.</param>
/// <param name="Least">[SI] 2.5 in 100 lie below.</param>
/// <param name="Greatest">[SI] 2.5 in 100 lie above.</param>
/// <param name="Mean">[SI] of all draws.</param>
/// <param name="Nil">Share of draws in which nothing is left.</param>
public sealed record FitDraws(string State, int Draws, double Mean, double Least, double Greatest, double Nil);
