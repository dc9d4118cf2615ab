namespace Thoubook.Record.Quantities;

/// <summary>The one reader of measured quantities. Every door (form, command, engine file, CSV) calls it; nothing else reads a number that was measured.</summary>
/// <remarks>
/// It reads, it refuses, or it asks. Questions come one at a time: what the number is, then its unit, then whether it was a slip; each answer is a code
/// in <see cref="ReadingContext.Confirmed"/>, and a text with several questions is settled when all its codes are there. What is read, asked and refused
/// stands in <c>docs/quantities.md</c>.
/// </remarks>
public static class QuantityReader
{
    /// <summary>Longest text that is looked at.</summary>
    public const int LongestText = 200;

    /// <summary>[SI] No measured quantity is larger than this or, if not nought, smaller than its inverse.</summary>
    private const double Largest = 1e18;

    public static Outcome<Quantity> Read(string text, ReadingContext context)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(context);
        if (context is { Kind: { } kind, BareUnit: { } bare } && bare.Kind != kind)
            throw new ArgumentException($"The unit of a bare number, {bare}, is of another kind than the {kind.Word()} expected.", nameof(context));
        return new Reading(text, context).Read();
    }

    /// <summary>One text being read in one context.</summary>
    private sealed class Reading(string text, ReadingContext context)
    {
        private readonly QuantityKind? kind = context.Kind ?? context.BareUnit?.Kind ?? (context.FitSigns == FitSigns.NotHere ? null : QuantityKind.Length);
        private Problem? problem;

        public Outcome<Quantity> Read()
        {
            if (QuantityRefusals.OfCharacters(text) is { } unreadable)
                return unreadable;
            var tokens = FigureLexer.Scan(text, context.Decimal);
            var written = WrittenQuantity.Parse(tokens, context.FitSigns != FitSigns.NotHere && kind == QuantityKind.Length, out var leftOver);
            if (leftOver is { Kind: FigureTokenKind.Number } next && written is { Parts: [(var first, null)], Brackets: false } && Spaced(first, next) is { } spaced)
                return spaced;
            if (written.Parts.Count == 0 || leftOver is not null)
                return QuantityRefusals.OfShape(text, tokens, written, leftOver, kind);
            if (Signs(written) is { } badSigns)
                return badSigns;

            var numbers = Numbers(written);
            if (numbers is null)
                return problem!;
            var units = Units(written, numbers);
            if (units is null)
                return problem!;
            return Value(written, numbers, units);
        }

        private Problem? Signs(WrittenQuantity written)
        {
            if (context.FitSigns == FitSigns.NotHere && written.Brackets)
                return QuantityRefusals.Of("brackets-not-here", text, "Brackets say tight on a fit; this is not a fit.", "Write the figure without brackets.");
            if (context.FitSigns == FitSigns.NotHere && written.Fit != 0)
                return QuantityRefusals.Of("tight-loose-not-here", text, "Tight and loose (T, L) belong to fits; this is not a fit.", "Write the figure without them.");
            var saidTwice = written.Fit != 0 && (written.Minus || written.Plus) || written.Brackets && (written.Minus || written.Plus || written.Fit == 'L');
            return saidTwice
                ? QuantityRefusals.Of("sign-twice", text, "Tight or loose is said once: by a sign, by T or L, or by brackets.", "Write it one way: -0.0005 in, or 0.0005T, or (0.0005).")
                : null;
        }

        /// <summary>1 250: a thousand parted by a blank, a lost decimal point, or two figures.</summary>
        private Outcome<Quantity>? Spaced(FigureToken first, FigureToken second)
        {
            var group = second.Text.AsSpan();
            var isThousand = first is { Form: FigureForm.Whole, Length: <= 3 } && first.Text[0] != '0' && text.AsSpan(first.End, second.Start - first.End).Trim().IsEmpty;
            var isGroup = second.Form is FigureForm.Whole or FigureForm.Decimal or FigureForm.DecimalComma
                && group.Length >= 3 && group[..3].IndexOfAnyExceptInRange('0', '9') < 0 && (group.Length == 3 || !FigureMarks.IsDigit(group[3]));
            if (!isThousand || !isGroup)
                return null;
            (string Code, string Mark)[] options = second.Form == FigureForm.Whole ? [("space-thousands", ""), ("space-point", ".")] : [("space-thousands", "")];
            if (!Choose(options, option => option.Code, "The blank may part thousands, or a point may be lost.", option => first.Text + option.Mark + second.Text, out var answer))
                return problem!;
            var joined = string.Concat(text.AsSpan(0, first.Start), first.Text, answer.Mark, text.AsSpan(second.Start));
            return new Reading(joined, context).Read() switch
            {
                Outcome<Quantity>.Ok ok => new Outcome<Quantity>.Ok(ok.Value with { Text = text }, ok.Cautions),
                Outcome<Quantity>.Refused refused => new Outcome<Quantity>.Refused([.. refused.Problems.Select(p => p with { Found = QuantityRefusals.Show(text) })]),
                var other => other,
            };
        }

        /// <summary>The value of every number; all that are doubtful are taken by one rule, so that one answer settles them.</summary>
        private FigureValue[]? Numbers(WrittenQuantity written)
        {
            var numbers = written.Parts.Select(part => part.Number).ToArray();
            if (Array.Find(numbers, number => number.Form == FigureForm.Broken) is { } broken)
            {
                problem = QuantityRefusals.OfBroken(text, broken);
                return null;
            }

            var doubtful = Array.FindAll(numbers, number => number.Form == FigureForm.Doubtful);
            if (doubtful.Length == 0)
                return [.. numbers.Select(number => number.Values[0])];

            var rules = doubtful[0].Values.Where(value => Array.TrueForAll(doubtful, number => number.Values.Any(other => other.Code == value.Code))).ToArray();
            if (rules.Length == 0)
            {
                problem = QuantityRefusals.OfBroken(text, doubtful[1]);
                return null;
            }

            var why = context.Decimal == DecimalMark.Unstated
                ? "The comma may be the decimal mark or part thousands."
                : $"The decimal mark here is stated to be the {(context.Decimal == DecimalMark.Point ? "point" : "comma")}, and this figure does not keep to it.";
            return Choose(rules, rule => rule.Code, why, rule => rule.Written, out var chosen)
                ? [.. numbers.Select(number => number.Form == FigureForm.Doubtful ? number.Values.Single(value => value.Code == chosen.Code) : number.Values[0])]
                : null;
        }

        private TradeUnit[]? Units(WrittenQuantity written, FigureValue[] numbers)
        {
            if (written.Parts is [(_, null)])
                return Bare(written) is { } bare ? [bare] : null;

            var candidates = new IReadOnlyList<TradeUnit>[numbers.Length];
            for (var i = 0; i < candidates.Length; i++)
            {
                if (written.Parts[i].Unit is not { } token)
                {
                    problem = QuantityRefusals.Of("two-figures", text, "One quantity is wanted here; every part of it needs its unit.", "Write one figure with one unit, or each part with its own: 2 ft 3 in.");
                    return null;
                }

                candidates[i] = token.UnitsOf(kind);
                if (candidates[i].Count == 0)
                {
                    problem = QuantityRefusals.OfWrongKind(text, token, kind);
                    return null;
                }
            }

            if (candidates.Length > 1)
                return Compound(written, numbers, candidates);
            // A tenth is a tenth of a thou in the inch trade and a tenth of a millimetre where millimetres are the custom.
            if (candidates[0] is [var only] && only == TradeUnit.Tenth && context.BareUnit is { IsMetricLength: true })
                candidates[0] = [TradeUnit.Tenth, TradeUnit.TenthMillimetre];
            return ChooseUnit(candidates[0], $"{written.Parts[0].Unit!.Text} is written for more than one unit.", written, numbers[0]) is { } chosen ? [chosen] : null;
        }

        private static bool IsNegative(WrittenQuantity written) => written.Minus || written.Brackets || written.Fit == 'T';

        /// <summary>The unit of a number without one: what the place says; else it is asked.</summary>
        private TradeUnit? Bare(WrittenQuantity written)
        {
            var number = written.Parts[0].Number;
            if (context.BareUnit is { } stated)
            {
                var binary = number.Form is FigureForm.Fraction or FigureForm.Mixed && stated.Kind == QuantityKind.Length && stated != TradeUnit.Inch && stated != TradeUnit.Foot;
                return binary && (stated.IsMetricLength || number.Values[0].Value.Denominator >= 16)
                    ? ChooseUnit([TradeUnit.Inch, stated], $"A fraction is an inch's custom; figures here are in {stated}.", written, number.Values[0])
                    : stated;
            }

            if (kind == QuantityKind.Number)
                return TradeUnit.One;
            IReadOnlyList<TradeUnit> usual = kind is { } known ? TradeUnit.Usual(known) : [.. TradeUnit.Usual(QuantityKind.Length), TradeUnit.One];
            if (context.Plausible is { } limits)
            {
                var likely = new Plausibility(limits.Least, limits.Greatest);
                usual = [.. usual.OrderBy(unit => number.Values.Any(value => likely.IsNoSurprise(unit.ToSi(value.Value))) ? 0 : 1)];
            }

            return ChooseUnit(usual, "A figure needs its unit here.", written, number.Values[0]);
        }

        private TradeUnit? ChooseUnit(IReadOnlyList<TradeUnit> candidates, string why, WrittenQuantity written, FigureValue number)
        {
            if (candidates is [var only])
                return only;
            return Choose(candidates, unit => "unit-" + unit.Code, why, unit => $"{(IsNegative(written) ? "-" : "")}{number.Written} {unit.Symbol}".TrimEnd(), out var chosen) ? chosen : null;
        }

        /// <summary>2 ft 3 in: units of one kind, each smaller than the one before and less than one of it.</summary>
        private TradeUnit[]? Compound(WrittenQuantity written, FigureValue[] numbers, IReadOnlyList<TradeUnit>[] candidates)
        {
            var units = CommonKind(candidates) ?? (kind is null ? CommonKind([.. written.Parts.Select(part => part.Unit!.Units)]) : null);
            if (units is null)
            {
                problem = QuantityRefusals.Of("two-figures", text, "One quantity is wanted here; these parts do not add up to one.", "Write one figure with one unit.");
                return null;
            }

            for (var i = 1; i < units.Length; i++)
            {
                if (!(units[i].Factor < units[i - 1].Factor * (1 - 1e-9)) || units[i].ToSi(numbers[i].Value) >= units[i - 1].Factor * (1 - 1e-12) || units[i - 1].Offset != 0
                    || !numbers[i - 1].Value.Denominator.IsOne || numbers[i].Value.Sign < 0)
                {
                    problem = QuantityRefusals.Of("two-figures", text, "Parts of one quantity go from the larger unit to the smaller, whole numbers first, each part less than one of the unit before it.", "Write one figure with one unit, or parts such as 2 ft 3 in.");
                    return null;
                }
            }

            return units;
        }

        private static TradeUnit[]? CommonKind(IReadOnlyList<TradeUnit>[] candidates)
        {
            var kinds = candidates[0].Select(unit => unit.Kind).Where(k => candidates.All(units => units.Any(unit => unit.Kind == k))).Distinct().ToArray();
            return kinds is [var common] && candidates.All(units => units.Count(unit => unit.Kind == common) == 1)
                ? [.. candidates.Select(units => units.Single(unit => unit.Kind == common))]
                : null;
        }

        private Outcome<Quantity> Value(WrittenQuantity written, FigureValue[] numbers, TradeUnit[] units)
        {
            var negative = IsNegative(written);
            var unit = units[^1];
            var value = numbers.Length == 1 ? numbers[0].Value : Sum(numbers, units);
            value = negative ? -value : value;
            var si = unit.ToSi(value);
            if (!(Math.Abs(si) <= Largest) || value.Sign != 0 && unit.Offset == 0 && Math.Abs(si) < 1 / Largest)
                return QuantityRefusals.Of("out-of-reach", text, "No measured quantity is so large or so small.", "Look at the figure and its power of ten again.");

            var slips = Slips.Of(value, si, unit, context, bare: written.Parts[0].Unit is null);
            if (slips.Count > 0)
            {
                if (!Choose(slips, slip => slip.Code, Slips.Why(context, unit), slip => QuantityText.InTradeUnits(slip.Si, slip.Unit), out var meant))
                    return problem!;
                (si, unit) = (meant.Si, meant.Unit);
            }

            return new Quantity(si, unit.Kind, unit, text) { Signs = context.FitSigns };
        }

        /// <summary>The sum of the parts, in the last unit.</summary>
        private static Exact Sum(FigureValue[] numbers, TradeUnit[] units)
        {
            var sum = default(Exact);
            for (var i = 0; i < units.Length; i++)
            {
                if (i > 0)
                    sum *= units[i - 1].In(units[i]);
                sum += numbers[i].Value;
            }

            return sum;
        }

        /// <summary>The one option whose code was confirmed; else a question is set that offers them all.</summary>
        private bool Choose<T>(IReadOnlyList<T> options, Func<T, string> codeOf, string why, Func<T, string> show, out T chosen)
        {
            var confirmed = options.Where(option => context.Confirmed.Contains(codeOf(option))).ToArray();
            chosen = confirmed is [var only] ? only : default!;
            if (confirmed.Length == 1)
                return true;
            var meanings = options.Select(option => new Meaning(codeOf(option), Understood(codeOf(option), options.Select(codeOf)) ?? show(option))).ToArray();
            problem = new Problem(meanings[0].Code, "", QuantityRefusals.Show(text), why, "Say which is meant.", meanings);
            return false;
        }

        /// <summary>What will be understood once a code is confirmed; null where there is more to ask.</summary>
        private string? Understood(string code, IEnumerable<string> others)
        {
            var confirmed = context.Confirmed.Except(others, StringComparer.Ordinal).Append(code).ToHashSet(StringComparer.Ordinal);
            return new Reading(text, context with { Confirmed = confirmed }).Read().IsOk(out var quantity, out _) ? quantity.Understood : null;
        }
    }
}
