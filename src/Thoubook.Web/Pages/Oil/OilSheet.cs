using System.Text.RegularExpressions;
using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Web.Drawings.Oil;

namespace Thoubook.Web.Pages.Oil;

/// <summary>What the oil sheet shows, all of it worked out from one record.</summary>
public sealed partial class OilSheet
{
    public OilSheet(EngineAppraisal engine, OilFindings found, string shown)
    {
        Engine = engine;
        Found = found;
        Units = OilUnits.Of(Circuit);
        Standing = [.. found.States.Select(s => s.IsOk(out var state, out _) ? state : null).OfType<StateAnswer>()];
        Idle = Standing.FirstOrDefault(s => s.Answer.Point == Point);
        Shown = Standing.FirstOrDefault(s => s.State.Name == shown) ?? Idle ?? (Standing.Count > 0 ? Standing[0] : null);
    }

    public EngineAppraisal Engine { get; }

    public EngineName Name => Engine.Record.Engine.Name;

    public OilFindings Found { get; }

    public OilSystem System => Found.System;

    public OilCircuit Circuit => Found.System.Circuit;

    public OilUnits Units { get; }

    /// <summary>The states that have an answer.</summary>
    public IReadOnlyList<StateAnswer> Standing { get; }

    /// <summary>Hot idle, by which costs are told; null where it has no answer.</summary>
    public StateAnswer? Idle { get; }

    /// <summary>The one that is drawn.</summary>
    public StateAnswer? Shown { get; }

    public OilPoint Point => System.HotIdle;

    /// <summary>What is asked of the main gauge at hot idle.</summary>
    public GaugeLimit? MainLimit => Idle?.Gauges is [var main, ..] ? main.Limit : null;

    /// <summary>[Pa] where a scale of pressures ends that shows all of these.</summary>
    public static double EndOf(IEnumerable<double> pressures) => 1.08 * pressures.DefaultIfEmpty(1).Max();

    /// <summary>Pressure pump driver end float.</summary>
    public static string FigureName(FigureName figure) => $"{Sheets.Said.Title(figure.Part.Leaf)} {Sheets.Said.Words(figure.Local)}";

    /// <summary>A sentence that names figures and elements, with each said as a person says it.</summary>
    public string InWords(string text) => Sheets.Said.Sentence(Names().Replace(text, name =>
        Record.FigureName.TryRead(name.Value, out var figure, out _) && Engine[figure] is not null ? Lower(FigureName(figure))
        : ElementName.TryRead(name.Value, out var element, out _) && Circuit.Element(element) is { } of ? CircuitSketching.NameOf(of)
        : name.Value));

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];

    [GeneratedRegex("[a-z0-9]+(?:[-/.][a-z0-9]+)+", RegexOptions.None, 1000)]
    private static partial Regex Names();
}
