using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Web.Drawings;
using Thoubook.Workshop.Oil;

namespace Thoubook.Web.Pages.Oil;

/// <summary>One figure that can be slid.</summary>
/// <param name="Cost">What it costs as it stands.</param>
/// <param name="Unit">In which it is slid.</param>
/// <param name="Low">In that unit.</param>
/// <param name="High">In that unit.</param>
/// <param name="Step">In that unit.</param>
public sealed record OilSlide(PressureCost Cost, TradeUnit Unit, decimal Low, decimal High, decimal Step)
{
    /// <summary>How many figures are slid.</summary>
    public const int Most = 3;

    public FigureName Figure => Cost.Figure.Name;

    /// <summary>As it stands, to the nearest step.</summary>
    public decimal Now => OnStep(Unit.FromSi(Cost.Figure.Value.Value));

    public decimal OnStep(double value) => Math.Clamp(Math.Round((decimal)value / Step) * Step, Low, High);

    public static IReadOnlyList<OilSlide> Of(OilSheet sheet) =>
        sheet.Found.Costs.IsOk(out var costs, out _) ? [.. costs.Take(Most).Select(c => Of(c, sheet))] : [];

    private static OilSlide Of(PressureCost cost, OilSheet sheet)
    {
        var letters = sheet.Engine[cost.Figure.Name] is { } figure ? Lettering.Of(figure, sheet.Engine.Record) : Lettering.For(sheet.Units.Clearance, []);
        var unit = letters.Unit == TradeUnit.Inch && Math.Abs(cost.Figure.Value.Value) < 0.05 * TradeUnit.Inch.Factor ? TradeUnit.Thou : letters.Unit;
        var (now, asNew) = (unit.FromSi(cost.Figure.Value.Value), unit.FromSi(cost.AsNew));
        var room = Math.Abs(now - asNew) + (0.3 * Math.Min(Math.Abs(now), 10 * Math.Abs(now - asNew)));
        var step = StepOf(Math.Max(Math.Abs(now - asNew) + (2 * room), 1e-6) / 200);
        var low = Math.Max(Math.Min(now, asNew) - room, 0);
        return new(cost, unit, Math.Floor((decimal)low / step) * step, Math.Ceiling((decimal)(Math.Max(now, asNew) + room) / step) * step, step);
    }

    private static decimal StepOf(double least) => (decimal)Math.Pow(10, Math.Ceiling(Math.Log10(least)));
}

/// <summary>A trial asked for by the slides.</summary>
public sealed class OilTried
{
    public required IReadOnlyList<(OilSlide Slide, decimal At)> Slides { get; init; }

    /// <summary>[°C]</summary>
    public required int Oil { get; init; }

    /// <summary>What is supposed beside the slides, as typed.</summary>
    public OilSupposed Supposed { get; init; } = new();

    public TrialAnswer? Answer { get; init; }

    /// <summary>[Pa] what the main gauge reads with the oil so warm and nothing else changed.</summary>
    public double? Now => Answer is { } answer ? answer.Then.Pressure.Value - answer.Difference.Value : null;

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>As things stand.</summary>
    public static OilTried Nothing(OilSheet sheet) => new()
    {
        Slides = [.. OilSlide.Of(sheet).Select(s => (s, s.Now))],
        Oil = (int)Math.Round(TradeUnit.Celsius.FromSi(sheet.Point.OilTemperature)),
        Answer = sheet.Found.Untouched.IsOk(out var answer, out _) ? answer : null,
    };

    /// <summary>What the address asks for; every number of it goes to the one reader.</summary>
    public static OilTried Of(OilSheet sheet, IQueryCollection asked)
    {
        var (slides, problems) = (new List<(OilSlide Slide, decimal At)>(), new List<Problem>());
        var change = new Dictionary<FigureName, double>();
        foreach (var slide in OilSlide.Of(sheet))
        {
            var at = slide.Now;
            if (asked[slide.Figure.ToString()].ToString() is { Length: > 0 } typed && Read($"{typed} {slide.Unit.Symbol}", slide.Cost.Figure.Name.ToString(), sheet.Engine[slide.Figure]?.Figure.Kind) is { } quantity)
            {
                at = slide.OnStep(slide.Unit.FromSi(quantity.Si));
                if (at != slide.Now)
                    change[slide.Figure] = quantity.Si - slide.Cost.Figure.Value.Value;
            }

            slides.Add((slide, at));
        }

        var point = sheet.Point;
        if (asked["oil"].ToString() is { Length: > 0 } oil && Read($"{oil} °C", "oil", QuantityKind.Temperature) is { } warm)
            point = point with { OilTemperature = warm.Si };
        var supposed = OilSupposed.Of(asked);
        var trial = OilQuestion.Trial(sheet.Engine.Record, supposed.Supposition, new HashSet<string>()).IsOk(out var meant, out var unclear) ? meant : null;
        problems.AddRange(unclear);
        foreach (var figure in trial?.Set.Keys ?? [])
            change.Remove(figure);
        var answer = problems.Count > 0 ? null : sheet.System.Try(trial! with { ChangeBy = change }, point).IsOk(out var found, out var refused) ? found : Refuse(refused);
        return new() { Slides = slides, Oil = (int)Math.Round(TradeUnit.Celsius.FromSi(point.OilTemperature)), Supposed = supposed, Answer = answer, Problems = problems };

        TrialAnswer? Refuse(IReadOnlyList<Problem> why)
        {
            problems.AddRange(why);
            return null;
        }

        Quantity? Read(string text, string field, QuantityKind? kind)
        {
            if (QuantityReader.Read(text, ReadingContext.None with { Kind = kind }).IsOk(out var quantity, out var wrong))
                return quantity;
            problems.AddRange(wrong.Select(p => p with { Field = field }));
            return null;
        }
    }
}
