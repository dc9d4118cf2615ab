namespace Thoubook.Mechanics.Circuits;

/// <summary>What one number of an element may be.</summary>
internal readonly record struct SizeRule(string Name, double Least, bool IsAboveLeast, double Greatest, bool MayBeAbsent)
{
    public static SizeRule AboveZero(string name) => new(name, 0, true, double.MaxValue, false);

    public static SizeRule ZeroOrMore(string name) => new(name, 0, false, double.MaxValue, false);

    public static SizeRule Any(string name) => new(name, -double.MaxValue, false, double.MaxValue, false);

    public static SizeRule Optional(string name) => new(name, 0, false, double.MaxValue, true);

    public static SizeRule Between(string name, double least, double greatest) => new(name, least, true, greatest, false);

    public bool Allows(double value) => (MayBeAbsent && double.IsNaN(value)) || (value >= Least && value <= Greatest && (value > Least || !IsAboveLeast));

    public string Allowed => Least == -double.MaxValue ? "a finite number"
        : Greatest < double.MaxValue ? FormattableString.Invariant($"above {Least:G4}, at most {Greatest:G4}")
        : IsAboveLeast ? "above 0" : "0 or more";
}
