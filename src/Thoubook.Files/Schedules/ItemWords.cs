using System.Text;

namespace Thoubook.Files.Schedules;

/// <summary>Which way a limit of wear lies by the words of the item.</summary>
internal enum WearWay
{
    Unsaid,

    /// <summary>A hole, groove, clearance or form error: wear makes it greater.</summary>
    Grows,

    /// <summary>A shaft, thickness or height: wear makes it less.</summary>
    Shrinks,
}

/// <summary>The trade's words in the description of an item: what kind of thing it is and which way it wears.</summary>
internal sealed class ItemWords
{
    private static readonly string[] FormPhrases =
    [
        "ovality", "oval", "out of round", "out of roundness", "roundness", "runout", "run out", "eccentricity", "concentricity", "flatness", "straightness",
        "out of true", "out of square", "squareness", "parallelism", "bow", "bend", "twist", "warp", "warpage", "distortion", "tir", "difference", "differential", "variation",
        "misalignment", "unbalance", "out of balance", "swash", "waviness",
    ];

    private static readonly string[] EndFloatPhrases =
    [
        "end float", "end play", "endplay", "endfloat", "end clearance", "end thrust", "side float", "side play", "axial clearance", "axial play", "axial float", "thrust clearance", "float",
        "lateral play", "lateral clearance", "thrust play",
    ];

    private static readonly string[] InterferencePhrases =
        ["interference", "press fit", "shrink fit", "shrinkage", "force fit", "drive fit", "driving fit", "tight fit", "tightness"];

    private static readonly string[] NipPhrases = ["nip", "crush", "pinch", "stand proud", "protrusion"];

    private static readonly string[] ClearancePhrases = ["clearance", "play", "fit", "lash", "slack", "freedom", "looseness"];

    private static readonly string[] SpringWords =
        ["length", "load", "loaded", "free", "pressure", "rate", "force", "tension", "compressed", "height", "weight", "strength", "poundage", "wire", "coil", "installed", "test"];

    private static readonly string[] HoleWords =
    [
        "bore", "hole", "inside", "internal", "groove", "slot", "keyway", "counterbore", "recess", "depth", "parent", "i d", "id",
    ];

    private static readonly string[] ShaftWords =
    [
        "outside", "external", "journal", "crankpin", "thickness", "height", "stem", "spindle", "lift", "o d", "od", "skirt", "thick",
        "lobe", "tongue", "trunnion",
    ];

    private static readonly string[] WeakHoleWords = ["bush", "bushing", "bearing", "guide", "cylinder", "liner", "barrel", "sleeve", "housing", "eye"];

    private static readonly string[] WeakShaftWords = ["shaft", "pin", "piston", "camshaft", "crankshaft", "valve", "tappet", "plunger", "follower", "width", "gear", "rod", "flange", "washer", "shell", "key"];

    private static readonly string[] NoLengthWords =
    [
        "pressure", "temperature", "capacity", "volume", "speed", "ratio", "number", "tooth", "teeth", "timing", "advance", "firing", "octane", "voltage", "compression", "rpm", "flow", "time", "viscosity",
        "hardness", "opens", "closes", "current", "resistance", "power",
    ];

    private static readonly string[] FeatureWords =
    [
        "diameter", "dia", "bore", "length", "width", "depth", "thickness", "height", "clearance", "backlash", "gap", "float", "play", "fit", "wear", "thrust", "taper", "ovality",
        "runout", "size", "inside", "outside", "internal", "external", "interference", "preload", "torque", "load", "weight", "lift", "round", "groove", "journal",
    ];

    private readonly string padded;

    private ItemWords(string padded) => this.padded = padded;

    public static ItemWords Of(string text) => new(Normalise(text));

    public bool IsEmpty => padded.Length <= 1;

    public bool Has(string phrase) => padded.Contains($" {phrase} ", StringComparison.Ordinal);

    public bool HasAny(ReadOnlySpan<string> phrases)
    {
        foreach (var phrase in phrases)
        {
            if (Has(phrase))
                return true;
        }

        return false;
    }

    /// <summary>A form error or a difference: new and worn are greatest values only.</summary>
    public bool IsForm => HasAny(FormPhrases) || (Has("taper") && !HasAny(["taper pin", "taper roller", "taper bearing", "taper bore", "taper plug", "taper key", "taper shank", "taper seat"]));

    /// <summary>Whether the words say what is measured, and not only where.</summary>
    public bool SayFeature => HasAny(FeatureWords) || IsForm || HasAny(EndFloatPhrases) || HasAny(InterferencePhrases);

    public bool SayFit => HasAny(ClearancePhrases) || HasAny(EndFloatPhrases) || HasAny(InterferencePhrases) || Has("backlash") || Has("gap");

    public bool SayTight => HasAny(InterferencePhrases);

    /// <summary>How far half shells stand proud: a feeler's gap, a height or an interference, by the book's own method.</summary>
    public bool SayNip => HasAny(NipPhrases);

    /// <summary>Ring in groove is a clearance from side to side; a big end's is round its pin.</summary>
    private bool SayEndFloat
    {
        get
        {
            if (Has("float") && HasAny(["level", "chamber", "needle", "bowl"]))
                return false;
            if (HasAny(["big end clearance", "small end clearance", "little end clearance", "big end play", "small end play"]))
                return Has("side clearance") || Has("axial");
            return HasAny(EndFloatPhrases) || (Has("side clearance") && !Has("ring")) || (Has("to") && Has("thrust") && !Has("thickness"));
        }
    }

    /// <summary>Whether the words themselves call the figure a limit of wear ("maximum permissible (worn)").</summary>
    public bool SayWornLimit => HasAny(["worn", "permissible", "allowable", "wear limit", "service limit", "limit of wear", "replace if", "reject", "discard"]);

    /// <summary>"Maximum" or "minimum" in the words: a figure alone is that end only.</summary>
    public LimitEnd End => (HasAny(["max", "maximum", "greatest", "not over"]), HasAny(["min", "minimum", "least"])) switch
    {
        (true, false) => LimitEnd.Max,
        (false, true) => LimitEnd.Min,
        _ => LimitEnd.Both,
    };

    public bool SayNoLength => HasAny(NoLengthWords);

    public bool SayWear => Has("wear");

    /// <summary>The kind by the words; null where they say nothing (a dimension, if figures are a length's).</summary>
    public RowKind? Kind
    {
        get
        {
            if (IsForm)
                return RowKind.Other;
            if (Has("torque") || Has("tightening"))
                return RowKind.Torque;
            if (Has("backlash") || Has("back lash"))
                return RowKind.Backlash;
            if (SayNip)
                return RowKind.Other;
            if (Has("ring") && (Has("end clearance") || Has("gap")))
                return RowKind.Gap;
            if (SayEndFloat)
                return RowKind.EndFloat;
            if (HasAny(InterferencePhrases))
                return RowKind.Interference;
            if (HasAny(ClearancePhrases))
                return RowKind.Clearance;
            if (Has("gap"))
                return RowKind.Gap;
            if (Has("spring") && HasAny(SpringWords))
                return RowKind.Spring;
            if (HasAny(["wear", "preload", "weight", "mass", "pull", "load", "angle"]))
                return RowKind.Other;
            if (SayFeature)
                return RowKind.Dimension;
            return HasAny(NoLengthWords) ? RowKind.Other : null;
        }
    }

    public WearWay Way
    {
        get
        {
            if (Kind is { } kind && (kind.IsFit() || IsForm))
                return WearWay.Grows;
            if (Kind == RowKind.Spring)
                return WearWay.Shrinks;
            var hole = HasAny(HoleWords);
            var shaft = HasAny(ShaftWords);
            if (hole != shaft)
                return hole ? WearWay.Grows : WearWay.Shrinks;
            if (Has("outside") || Has("od") || Has("external"))
                return WearWay.Shrinks;
            if (Has("inside") || Has("internal") || Has("bore"))
                return WearWay.Grows;
            return WearWay.Unsaid;
        }
    }

    /// <summary>A hint only: figures may say otherwise without a contradiction.</summary>
    public WearWay WeakWay
    {
        get
        {
            if (Way != WearWay.Unsaid)
                return Way;
            var hole = HasAny(WeakHoleWords);
            var shaft = HasAny(WeakShaftWords);
            return hole == shaft ? WearWay.Unsaid : hole ? WearWay.Grows : WearWay.Shrinks;
        }
    }

    public bool SayShaftPart => Has("shaft") || Has("camshaft") || Has("crankshaft") || Has("pin") || Has("spindle");

    public bool SayHolePart => HasAny(WeakHoleWords) || Has("bore") || Has("gear");

    /// <summary>The significant words, for finding the parts that a fit joins.</summary>
    public IEnumerable<string> Words => padded.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static string Normalise(string text)
    {
        var spaced = new StringBuilder(text.Length + 2).Append(' ');
        var lower = text.ToLowerInvariant()
            .Replace("i. d.", "id", StringComparison.Ordinal).Replace("i.d.", "id", StringComparison.Ordinal).Replace("i/d", "id", StringComparison.Ordinal)
            .Replace("o. d.", "od", StringComparison.Ordinal).Replace("o.d.", "od", StringComparison.Ordinal).Replace("o/d", "od", StringComparison.Ordinal)
            .Replace("t.i.r.", "tir", StringComparison.Ordinal);
        foreach (var character in lower)
        {
            if (char.IsLetterOrDigit(character))
                spaced.Append(character);
            else if (character is not ('\'' or '’') && spaced[^1] != ' ')
                spaced.Append(' ');
        }

        var words = spaced.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? " " : $" {string.Join(' ', words.Select(Singular))} ";
    }

    /// <summary>Bushes, journals, clearances: one word with its singular. Words that merely end so (thickness, radius) stay.</summary>
    private static string Singular(string word)
    {
        if (word.Length < 4 || word[^1] != 's' || word.EndsWith("ss", StringComparison.Ordinal) || word.EndsWith("us", StringComparison.Ordinal) || word.EndsWith("is", StringComparison.Ordinal))
            return word;
        return word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("ches", StringComparison.Ordinal) || word.EndsWith("xes", StringComparison.Ordinal) ? word[..^2] : word[..^1];
    }
}
