using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>What one kind of element is and the sizes that it has.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Says">One sentence for a person who chooses it.</param>
/// <param name="Keys">Its sizes, in the order in which they are written.</param>
public sealed record ElementShape(ElementKind Kind, string Says, IReadOnlyList<ElementKey> Keys)
{
    /// <summary>What the spring chamber is open to where <c>vent</c> is left out; null for a kind that has no spring chamber.</summary>
    public string? VentLeftOut { get; init; }

    /// <summary>Groups of keys of which exactly one is given.</summary>
    public IReadOnlyList<IReadOnlyList<string>> OneOf { get; init; } = [];

    /// <summary>Groups of keys that are given together: the first asks for the others.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Together { get; init; } = [];

    /// <summary>What no piece of metal can be otherwise.</summary>
    public IReadOnlyList<SizeOrder> Orders { get; init; } = [];

    public bool HasVent => VentLeftOut is not null;

    public ElementKey? Key(string name) => Keys.FirstOrDefault(k => k.Name == name);

    /// <summary>What is wrong with the sizes of an element that are all known.</summary>
    /// <param name="si">[SI] The size that a key has; null where it is left out.</param>
    /// <param name="unit">The unit in which a key's size was written; null: as its kind is usually told.</param>
    public IEnumerable<Problem> Check(Func<string, double?> si, Func<string, TradeUnit?> unit) => Check(si, unit, new HashSet<string>());

    /// <summary>What is wrong with the sizes of an element, each with the key that it is about; nothing where they can be.</summary>
    /// <param name="si">[SI] The size that a key has; null where it is left out or not known.</param>
    /// <param name="unit">The unit in which a key's size was written; null: as its kind is usually told.</param>
    /// <param name="given">The keys that are given, known or not: the others have their defaults.</param>
    public IEnumerable<Problem> Check(Func<string, double?> si, Func<string, TradeUnit?> unit, IReadOnlySet<string> given)
    {
        var wrong = new HashSet<string>(StringComparer.Ordinal);
        foreach (var key in Keys)
        {
            if (si(key.Name) is { } value && !key.Allows(value) && wrong.Add(key.Name))
                yield return new Problem("circuit-size", key.Name, In(key).Show(value), $"{Capital(key.Name)} of a {Kind.Word()}: {key.Allowed.In(In(key))}.", "Correct it.");
        }

        foreach (var order in Orders.Where(o => !wrong.Contains(o.Lesser) && !wrong.Contains(o.Greater)))
        {
            if (Of(order.Lesser) is { } a && Of(order.Greater) is { } b && (order.MayBeEqual ? a > order.Share * b : a >= order.Share * b))
            {
                var at = si(order.Lesser) is null ? order.Greater : order.Lesser;
                var (lesser, greater) = (unit(order.Lesser) ?? unit(order.Greater) ?? In(Key(order.Lesser)!), unit(order.Greater) ?? unit(order.Lesser) ?? In(Key(order.Greater)!));
                yield return new Problem("circuit-sizes", at, $"{order.Lesser} {lesser.Show(a)} and {order.Greater} {greater.Show(b)}", $"{order.Says}.", "Correct one of them.");
            }
        }

        TradeUnit In(ElementKey key) => unit(key.Name) ?? key.UsualUnit;

        double? Of(string key) => si(key) ?? (given.Contains(key) ? null : Key(key)!.Default);
    }

    /// <summary>What is wrong with which keys an element gives.</summary>
    public IEnumerable<Problem> CheckKeys(IReadOnlySet<string> given)
    {
        foreach (var key in Keys.Where(k => k.Need == KeyNeed.Required && !given.Contains(k.Name)))
            yield return new Problem("circuit-key-missing", key.Name, "nothing", $"A {Kind.Word()} needs {key.Name}: {key.Says}.", $"Write {key.Name}: and a quantity, or the name of a dimension or fit.");

        foreach (var group in OneOf)
        {
            var found = group.Where(given.Contains).ToList();
            if (found.Count == 0)
                yield return new Problem("circuit-key-missing", group[0], "nothing", $"A {Kind.Word()} needs {string.Join(" or ", group)}: {Key(group[0])!.Says}.", $"Write {string.Join(": or ", group)}:.");
            else if (found.Count > 1)
                yield return new Problem("circuit-key-twice", found[1], string.Join(" and ", found), $"A {Kind.Word()} has {string.Join(" or ", group)}, not both.", "Leave one of them out.");
        }

        foreach (var group in Together.Where(g => given.Contains(g[0])))
        {
            foreach (var missing in group.Skip(1).Where(k => !given.Contains(k)))
                yield return new Problem("circuit-key-missing", missing, "nothing", $"With {group[0]} a {Kind.Word()} needs {missing}: {Key(missing)!.Says}.", $"Write {missing}: and a quantity, or the name of a dimension or fit.");
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}

/// <summary>Whether an element must give a key.</summary>
public enum KeyNeed
{
    Required,

    /// <summary>Left out it has its default, or none, as its words say.</summary>
    [Word("may be left out")]
    MayBeLeftOut,
}

/// <summary>One size that a kind of element has.</summary>
/// <param name="Name">As it is written.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Need">Whether it must be given.</param>
/// <param name="Says">What it is, in words, and what it is where it is left out.</param>
public sealed record ElementKey(string Name, QuantityKind Kind, KeyNeed Need, string Says)
{
    /// <summary>[SI] Where it is left out; null: none, or worked out as <see cref="Says"/> tells.</summary>
    public double? Default { get; init; }

    /// <summary>[SI] the least that it may be.</summary>
    public double Least { get; init; }

    /// <summary>Whether it must be above <see cref="Least"/> and not just at it.</summary>
    public bool IsAboveLeast { get; init; }

    /// <summary>[SI] the greatest that it may be.</summary>
    public double Greatest { get; init; } = double.MaxValue;

    /// <summary>Whether it must be below <see cref="Greatest"/> and not just at it.</summary>
    public bool IsBelowGreatest { get; init; }

    /// <summary>A count of things.</summary>
    public bool IsWhole { get; init; }

    /// <summary>On which face or faces it is stated; <see cref="Side.Size"/> for a plain size.</summary>
    public Side Side { get; init; }

    public SizeRange Allowed => new(Least, Greatest) { IsAboveLeast = IsAboveLeast, IsBelowGreatest = IsBelowGreatest, IsWhole = IsWhole };

    /// <summary>The unit in which it is told where nobody has written one.</summary>
    public TradeUnit UsualUnit => TradeUnit.Usual(Kind)[0];

    public bool Allows(double si) => Allowed.Allows(si);

    /// <summary>Whether a figure that is stated on these faces can stand here without being doubled or halved.</summary>
    public bool Takes(Side side) => IsOneSided(side) is not { } theirs || IsOneSided(Side) is not { } ours || theirs == ours;

    private static bool? IsOneSided(Side side) => side switch
    {
        Side.Radial or Side.PerSide => true,
        Side.Diametral or Side.Total => false,
        _ => null,
    };
}

/// <summary>Of two sizes of one element, which is the lesser.</summary>
/// <param name="Lesser">The key of the lesser.</param>
/// <param name="Greater">The key of the greater.</param>
/// <param name="Says">Why, in words without a full stop.</param>
public sealed record SizeOrder(string Lesser, string Greater, string Says)
{
    public bool MayBeEqual { get; init; }

    /// <summary>[-] The lesser is below this many times the greater.</summary>
    public double Share { get; init; } = 1;
}
