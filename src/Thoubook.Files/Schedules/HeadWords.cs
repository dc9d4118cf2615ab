using System.Text.RegularExpressions;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>What the heading of one column says, before the other columns are looked at.</summary>
/// <param name="Use">Null: nothing known is said.</param>
/// <param name="Role">The limit, where it is one.</param>
/// <param name="Sure">Whether new or worn is said, and not only "dimension" or "maximum".</param>
internal sealed record HeadReading(ColumnUse? Use, ColumnRole? Role, bool Sure)
{
    public static HeadReading Nothing { get; } = new(null, null, false);
}

/// <summary>The words in the headings of schedules.</summary>
internal static partial class HeadWords
{
    private static readonly string[] Worn =
    [
        "worn", "wear limit", "limit of wear", "wear", "replace", "renew", "reject", "rejection", "discard", "scrap", "condemn", "service limit", "serviceable limit",
        "serviceability limit", "maximum allowable", "max allowable", "permissible", "allowable", "pwd", "pwc", "p w d", "p w c", "repair limit", "replacement limit", "used", "limit",
    ];

    private static readonly string[] WornWithMost = ["maximum allowable", "max allowable", "maximum permissible", "max permissible", "maximum wear", "max wear", "wear maximum", "wear max", "maximum worn", "max worn", "worn maximum", "worn max"];

    private static readonly string[] New =
    [
        "new", "manufacturer", "maker", "original", "standard", "std", "assembly", "drawing", "nominal", "specification", "specified",
        "factory", "production", "initial", "tolerance", "manufacture", "torque", "tightening torque", "setting", "manufacturing",
    ];

    private static readonly string[] Amount = ["amount of wear", "wear allowance", "allowable wear", "permissible wear", "wear permitted", "permitted wear", "maximum wear", "max wear", "wear on diameter", "wear maximum", "wear max"];

    private static readonly string[] Desired = ["desired", "preferred", "ideal", "recommended", "aim"];

    private static readonly string[] Clearance = ["clearance", "fit", "interference", "backlash", "play", "pwc", "p w c"];

    private static readonly string[] Dimension = ["dimension", "dimensional", "size", "diameter", "dia", "pwd", "p w d", "wear"];

    private static readonly string[] Least = ["min", "minimum", "least", "low", "lowest", "lower", "smallest", "mini"];

    private static readonly string[] Most = ["max", "maximum", "greatest", "high", "highest", "upper", "largest", "maxi"];

    private static readonly string[] Reference = ["ref", "reference", "fig", "figure", "key", "page", "no", "number", "qty", "quantity", "index", "para", "sheet", "plate", "serial"];

    private static readonly string[] Description =
    [
        "description", "component", "part", "measuring point", "point of measurement", "item", "name",
        "detail", "feature", "location", "measurement", "where measured", "application", "designation", "subject", "pair", "joint", "what is measured", "particular",
    ];

    private static readonly string[] Remarks = ["remark", "note", "observation", "comment", "method", "procedure"];

    private static readonly string[] Models = ["model", "applies to", "mark", "engine type", "type", "applicability"];

    /// <summary>Reads the heading of one column: the spanning head above it and its own words.</summary>
    public static HeadReading Read(string upper, string own)
    {
        var words = ItemWords.Of($"{upper} {own}");
        var ownWords = ItemWords.Of(own.Length > 0 ? own : upper);
        if (words.IsEmpty)
            return HeadReading.Nothing;
        if (ownWords.HasAny(Remarks))
            return new HeadReading(ColumnUse.Remarks, null, true);
        var least = words.HasAny(Least);
        var most = words.HasAny(Most);
        var wornSaid = words.HasAny(Worn.AsSpan(0, Worn.Length - 1));

        // "Limit" alone is that of wear beside another column; "limits" may be any.
        var worn = wornSaid || (words.Has("limit") && !least && !most && !Limits().IsMatch($"{upper} {own}"));
        var fresh = words.HasAny(New);
        var desired = words.HasAny(Desired);
        var clearance = words.HasAny(Clearance);
        var dimension = words.HasAny(Dimension.AsSpan(0, Dimension.Length - (worn && clearance ? 0 : 1)));
        var hole = ownWords.Has("hole") || ownWords.Has("bore");
        var shaft = ownWords.Has("shaft") || ownWords.Has("journal");
        var limit = worn || fresh || desired || least || most || words.Has("limit") || ((clearance || dimension) && !ownWords.HasAny(Description));
        if (!limit || (ownWords.HasAny(Description) && !least && !most && !worn && !ownWords.HasAny(New)))
        {
            if (ownWords.HasAny(Description) && !(ownWords.Has("no") || ownWords.Has("number")))
                return new HeadReading(ColumnUse.Description, null, true);
            if (ownWords.HasAny(Reference))
                return new HeadReading(ColumnUse.Reference, null, true);
            if (ownWords.Has("unit"))
                return new HeadReading(ColumnUse.Unit, null, true);
            if (ownWords.HasAny(Models))
                return new HeadReading(ColumnUse.AppliesTo, null, true);
            return limit ? LimitReading() : HeadReading.Nothing;
        }

        return LimitReading();

        HeadReading LimitReading()
        {
            if (worn && words.HasAny(WornWithMost))
                most = false;
            var side = desired ? LimitSide.Desired
                : worn && !fresh ? words.HasAny(Amount) && !clearance && !words.Has("limit") ? LimitSide.WearAmount : LimitSide.Worn
                : LimitSide.New;
            var end = least == most ? LimitEnd.Both : least ? LimitEnd.Min : LimitEnd.Max;
            var of = clearance && dimension ? LimitOf.Row
                : clearance ? LimitOf.Clearance
                : hole && !shaft ? LimitOf.Hole
                : shaft && !hole ? LimitOf.Shaft
                : dimension ? LimitOf.Dimension
                : LimitOf.Row;

            // "new" and "worn" in one head, such as "limit new or worn", say nothing certain.
            var sure = (wornSaid || fresh || desired) && !(worn && fresh && !words.Has("tolerance"));
            return new HeadReading(ColumnUse.Limit, ColumnRole.Limit(side, end, of, UnitIn(own) ?? UnitIn(upper)), sure);
        }
    }

    /// <summary>The unit that a heading gives; where it gives one and a second in brackets, the one outside the brackets.</summary>
    public static TradeUnit? UnitIn(string head)
    {
        var outside = Bracketed().Replace(head, " ");
        return One(outside) ?? (Several(outside) ? null : One(head));
    }

    /// <summary>Whether a heading names both families of unit without saying which is which.</summary>
    public static bool Several(string head) => Inches(Bracketed().Replace(head, " ")) && Millimetres(Bracketed().Replace(head, " "));

    private static TradeUnit? One(string text)
    {
        if (Thousandths().IsMatch(text))
            return TradeUnit.Thou;
        if (HundredthsOfMillimetre().IsMatch(text))
            return null;
        var inches = Inches(text);
        var millimetres = Millimetres(text);
        return inches == millimetres ? Other(text) : inches ? TradeUnit.Inch : TradeUnit.Millimetre;
    }

    private static TradeUnit? Other(string text)
    {
        var words = ItemWords.Of(text);
        return words.Has("micron") || words.Has("µm") || words.Has("μm") ? TradeUnit.Micrometre
            : words.Has("lbf ft") || words.Has("lb ft") || words.Has("ft lb") || words.Has("ft lbf") ? TradeUnit.PoundForceFoot
            : words.Has("n m") || words.Has("nm") ? TradeUnit.NewtonMetre
            : null;
    }

    private static bool Inches(string text) => InchWord().IsMatch(text);

    private static bool Millimetres(string text) => MillimetreWord().IsMatch(text);

    [GeneratedRegex(@"\([^)]*\)|\[[^\]]*\]", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bracketed();

    // The word "in" counts as a unit only alone, in brackets or at the end: "dimension in mm" is not inches.
    [GeneratedRegex(@"\binch(es)?\b|\bins\b|(^|[(\[,/])\s*in\.?\s*($|[)\],/])|\bin\.(?!\s*\w)|\bin\.?\s*$|""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex InchWord();

    [GeneratedRegex(@"\blimits\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Limits();

    [GeneratedRegex(@"\bm\.?\s?m\b|\bmillimet(re|er)s?\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex MillimetreWord();

    [GeneratedRegex(@"\bthous?\b|\bthousandths?\b|\b0?\.001\s*(in|"")", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Thousandths();

    [GeneratedRegex(@"(0?\.01|1/100|hundredths?( of a)?)\s*(mm|millimet)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex HundredthsOfMillimetre();
}
