using Thoubook.Files.Text;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>One row of limits of a figure: the first stands among the figure's own keys, further ones under <c>also</c>.</summary>
internal readonly record struct LimitRow(Figure Figure, LimitSet Set)
{
    public static LimitSet Blank { get; } = new(Limits.None);

    public static bool IsBlank(LimitSet set) => set.Limits == Limits.None && set.Source is null && set.Marks.Count == 0;
}

internal static class LimitKeys
{
    public static readonly Shape<LimitRow> Row = AddTo(new Shape<LimitRow>("a row of limits"), r => r.Set, (r, set) => r with { Set = set }, r => r.Figure);

    /// <summary>Adds the keys of a row of limits to the shape of whatever has one.</summary>
    public static Shape<T> AddTo<T>(Shape<T> shape, Func<T, LimitSet> get, Func<T, LimitSet, T> set, Func<T, Figure> figure)
    {
        return shape
            .Key("new", (item, _) => new NewForm(ReadingContexts.ForLimitsOf(figure(item))), item => get(item).Limits, Limit)
            .Key("worn", (item, _) => new WornForm(figure(item), get(item).Limits), item => get(item).Limits, Limit)
            .Key("allowance", Forms.Word(WearAllowance.AsGiven), item => get(item).Limits.Wear, (item, wear) => Limit(item, get(item).Limits with { Wear = wear }))
            .Key("document", Forms.Citation, item => get(item).Source, (item, source) => set(item, get(item) with { Source = source }))
            .Key("marks", Forms.Texts, item => get(item).Marks, (item, marks) => set(item, get(item) with { Marks = marks }));

        T Limit(T item, Limits limits) => set(item, get(item) with { Limits = limits });
    }

    /// <summary>Two limits in a list, either of which may be left open; false where they could not be read.</summary>
    private static bool TryReadPair(YamlList list, string key, Scope scope, ReadingContext context, out Quantity? least, out Quantity? greatest)
    {
        (least, greatest) = (null, null);
        if (list.Items.Count != 2)
        {
            scope.Refuse(list, key, "file-pair", $"a list of {list.Items.Count}", "Limits are a list of two, the least and the greatest, such as [1.2530 in, 1.2540 in]; ~ leaves one open.", "Write both.");
            return false;
        }

        var form = Forms.Quantity(context);
        var before = scope.Problems.Count;
        if (list.Items[0] is not YamlScalar { IsLeftOut: true })
            form.TryRead(list.Items[0], key, scope, out least);
        if (list.Items[1] is not YamlScalar { IsLeftOut: true })
            form.TryRead(list.Items[1], key, scope, out greatest);
        if (scope.Problems.Count > before)
            return false;

        // 0.5T to 1.5T is said from the looser to the tighter; as numbers the tighter is the lesser.
        if (context.FitSigns == FitSigns.TightIsNegative && least is { Si: < 0 } && greatest is { Si: < 0 } && least.Si > greatest.Si)
            (least, greatest) = (greatest, least);
        if (least is null || greatest is null || least.Si <= greatest.Si)
            return true;
        scope.Refuse(list, key, "limits-order", $"{least.Text} before {greatest.Text}", "The first limit is the least, the second the greatest.", "Put them in order, or correct the one that is wrong.");
        return false;
    }

    private static YamlNode? Pair(Quantity? least, Quantity? greatest, ReadingContext context, Scope scope)
    {
        var form = Forms.Quantity(context);
        return least is null && greatest is null ? null : new YamlList([Side(least), Side(greatest)]);

        YamlNode Side(Quantity? limit) => form.Write(limit, scope) ?? new YamlScalar("~", isQuoted: false);
    }

    private sealed class NewForm(ReadingContext context) : Form<Limits>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out Limits value)
        {
            Quantity? least, greatest;
            if (node is YamlList list)
            {
                if (!TryReadPair(list, key, scope, context, out least, out greatest))
                {
                    value = Limits.None;
                    return false;
                }
            }
            else
            {
                if (!Forms.Quantity(context).TryRead(node, key, scope, out least))
                {
                    value = Limits.None;
                    return false;
                }

                greatest = least;
            }

            value = Limits.None with { NewLeast = least, NewGreatest = greatest };
            return true;
        }

        public override YamlNode? Write(Limits value, Scope scope) => value.NewLeast is { } one && one == value.NewGreatest
            ? Forms.Quantity(context).Write(one, scope)
            : Pair(value.NewLeast, value.NewGreatest, context, scope);
    }

    /// <summary>Worn limits; a single one lies on the side to which the figure wears.</summary>
    private sealed class WornForm(Figure figure, Limits limits) : Form<Limits>
    {
        private ReadingContext Context => ReadingContexts.ForLimitsOf(figure);

        public override bool TryRead(YamlNode node, string key, Scope scope, out Limits value)
        {
            value = limits;
            Quantity? least = null, greatest = null;
            if (node is YamlList list)
            {
                if (!TryReadPair(list, key, scope, Context, out least, out greatest))
                    return false;
            }
            else
            {
                if (!Forms.Quantity(Context).TryRead(node, key, scope, out var one))
                    return false;
                switch (DirectionOf(one!, limits, figure.Wear))
                {
                    case WearDirection.Grows:
                        greatest = one;
                        break;
                    case WearDirection.Shrinks:
                        least = one;
                        break;
                    case WearDirection.None when scope.EntryIsBroken:
                        return false;
                    default:
                        scope.Refuse(
                            node,
                            key,
                            "limits-worn-side",
                            one!.Text,
                            limits.HasNew ? "A single worn limit lies outside the new limits, on the side to which the part wears." : "A single worn limit needs the way in which the part wears.",
                            "Write wear: grows or wear: shrinks, or both worn limits in a list: [~, 1.2560 in].");
                        return false;
                }
            }

            value = limits with { WornLeast = least, WornGreatest = greatest };
            if (IsInside(least, value, isLeast: true) || IsInside(greatest, value, isLeast: false))
            {
                scope.Refuse(node, key, "limits-worn-inside", node is YamlList ? $"[{least?.Text ?? "~"}, {greatest?.Text ?? "~"}]" : (least ?? greatest)!.Text, $"Worn limits do not lie inside the new ones ({limits.NewLeast?.Text ?? "~"} to {limits.NewGreatest?.Text ?? "~"}).", "Correct the one that is wrong.");
                return false;
            }

            return true;
        }

        public override YamlNode? Write(Limits value, Scope scope)
        {
            var isSingle = (value.WornLeast, value.WornGreatest) switch
            {
                (null, { } greatest) => DirectionOf(greatest, value, figure.Wear) == WearDirection.Grows,
                ({ } least, null) => DirectionOf(least, value, figure.Wear) == WearDirection.Shrinks,
                _ => false,
            };
            return isSingle ? Forms.Quantity(Context).Write(value.WornGreatest ?? value.WornLeast, scope) : Pair(value.WornLeast, value.WornGreatest, Context, scope);
        }

        /// <summary>As stated, or else as seen from the new limits; none where neither says it.</summary>
        private static WearDirection DirectionOf(Quantity worn, Limits limits, WearDirection? stated)
        {
            if (stated is { } direction)
                return direction;
            var mayGrow = limits.NewGreatest is { } greatest && worn.Si >= greatest.Si;
            var mayShrink = limits.NewLeast is { } least && worn.Si <= least.Si;
            return (mayGrow, mayShrink) switch
            {
                (true, false) => WearDirection.Grows,
                (false, true) => WearDirection.Shrinks,
                _ => WearDirection.None,
            };
        }

        private static bool IsInside(Quantity? worn, Limits limits, bool isLeast) =>
            worn is not null && (isLeast ? limits.NewLeast is { } least && worn.Si > least.Si : limits.NewGreatest is { } greatest && worn.Si < greatest.Si);
    }
}
