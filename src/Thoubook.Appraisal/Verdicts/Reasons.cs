using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>The sentence beside a verdict.</summary>
internal static class Reasons
{
    public static string Of(Verdict verdict, Probabilities p, BindingLimits limits, double confidence)
    {
        var asked = InHundred(confidence);
        var sentence = verdict switch
        {
            Verdict.AsNew => $"{InHundred(p.New)} in 100 that it is inside its new limits.",
            Verdict.WithinWornLimits when p.New > 1 - confidence => $"New size not proved: {InHundred(p.New)} in 100; {InHundred(p.Worn)} in 100 that it is inside its worn limits.",
            Verdict.WithinWornLimits => $"Worn, and {InHundred(p.Worn)} in 100 that it is inside its worn limits.",
            Verdict.BeyondWornLimits => $"{InHundred(p.PastWornEnd)} in 100 that it is past its worn limit.",
            Verdict.TooTight => $"{InHundred(p.PastOtherEnd)} in 100 that it is closer than its least limit.",
            Verdict.OffSize when limits.Wear == WearDirection.None => $"{InHundred(1 - p.Worn)} in 100 that it is outside its limits, and wear does not explain it.",
            Verdict.OffSize => $"{InHundred(p.PastOtherEnd)} in 100 that it is past the end that wear does not lead to.",
            Verdict.TooCloseToCall => $"{InHundred(p.Worn)} in 100 that it is inside its {(SameAsNew(limits) ? "" : "worn ")}limits; {asked} are asked for.",
            _ => "",
        };
        return sentence.Length > 0 ? char.ToUpperInvariant(sentence[0]) + sentence[1..] : sentence;
    }

    /// <summary>Where an error of form decides, it is the form that is said, and not the size.</summary>
    public static string? OfForm(Dimension dimension, DimensionEstimate details, double confidence)
    {
        return One("ovality", dimension.Ovality, details.Ovality) ?? One("taper", dimension.Taper, details.Taper);

        string? One(string word, FormLimit? limit, FormEstimate? form)
        {
            if (limit is null || form is null || Judge.FormWithin(limit, form) is var within && within >= confidence)
                return null;
            var allowed = SmallAmount.Of(dimension, (limit.Worn ?? limit.New)!.Si);
            var found = $"{SmallAmount.Of(dimension, form.Value)} between {form.Low} and {form.High}";
            return within <= 1 - confidence
                ? $"Its {word}, {found}, is past the {allowed} allowed: {InHundred(1 - within)} in 100."
                : $"Its {word}, {found}, is too near the {allowed} allowed: {InHundred(within)} in 100 that it is inside.";
        }
    }

    private static bool SameAsNew(BindingLimits limits) => limits.NewLeast == limits.WornLeast && limits.NewGreatest == limits.WornGreatest;

    /// <summary>A probability in hundredths, never rounded up to certainty nor down to nothing.</summary>
    public static string InHundred(double probability) => probability switch
    {
        > 0.999 => "over 99.9",
        > 0.99 => $"{probability * 100:0.0}",
        < 0.001 => "under 0.1",
        < 0.01 => $"{probability * 100:0.0}",
        _ => $"{probability * 100:0}",
    };

    public static string NotMeasured(IReadOnlyList<FigureName> terms) => terms.Count switch
    {
        0 => "No reading counts.",
        1 => $"{terms[0]} has no reading that counts.",
        _ => $"{terms.Count} of its terms have no reading that counts: {string.Join(", ", terms.Take(4))}{(terms.Count > 4 ? " …" : "")}.",
    };
}
