using System.Globalization;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Tests.Sums;

/// <summary>Evaluates a printed formula on its printed inputs: the check that a working says what was computed.</summary>
internal sealed class FormulaEvaluator
{
    private readonly string _text;
    private readonly Dictionary<string, Value> _inputs;
    private int _at;

    private FormulaEvaluator(string text, Dictionary<string, Value> inputs) => (_text, _inputs) = (text, inputs);

    /// <summary>One number, or a list worked on item by item.</summary>
    internal readonly record struct Value(double[] Items, bool IsList)
    {
        public double Single => IsList ? throw new FormatException("a list where one number is meant") : Items[0];
    }

    public static Value Evaluate(string formula, IReadOnlyList<WorkingInput> inputs)
    {
        var evaluator = new FormulaEvaluator(formula, inputs.ToDictionary(input => input.Symbol, input => new Value([.. input.Values], input.IsList)));
        var value = evaluator.Sum();
        evaluator.Skip();
        return evaluator._at == formula.Length ? value : throw new FormatException($"{formula}: cannot read on at {evaluator._at}.");
    }

    private Value Sum()
    {
        var value = Product();
        while (true)
        {
            if (Take('+'))
                value = ItemByItem(value, Product(), (a, b) => a + b);
            else if (Take('−'))
                value = ItemByItem(value, Product(), (a, b) => a - b);
            else
                return value;
        }
    }

    private Value Product()
    {
        var value = Signed();
        while (true)
        {
            if (Take('×'))
                value = ItemByItem(value, Signed(), (a, b) => a * b);
            else if (Take('/'))
                value = ItemByItem(value, Signed(), (a, b) => a / b);
            else
                return value;
        }
    }

    private Value Signed() => Take('−') ? ItemByItem(Of(0), Signed(), (a, b) => a - b) : Power();

    private Value Power()
    {
        var value = Atom();
        return Take('^') ? ItemByItem(value, Signed(), Math.Pow) : value;
    }

    private Value Atom()
    {
        if (Take('('))
            return Closed(Sum());
        Skip();
        var start = _at;
        if (_at < _text.Length && char.IsDigit(_text[_at]))
        {
            while (_at < _text.Length && (char.IsDigit(_text[_at]) || _text[_at] == '.'))
                _at++;
            return Of(double.Parse(_text[start.._at], CultureInfo.InvariantCulture));
        }

        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || _text[_at] == '_'))
            _at++;
        var word = _text[start.._at];
        if (word.Length == 0)
            throw new FormatException($"{_text}: a value is missing at {start}.");
        if (word == Formulas.Pi)
            return Of(Math.PI);
        if (_at >= _text.Length || _text[_at] != '(')
            return _inputs.TryGetValue(word, out var input) ? input : throw new FormatException($"{_text}: {word} is not among the inputs.");
        _at++;
        var arguments = new List<Value> { Sum() };
        while (Take(','))
            arguments.Add(Sum());
        Closed(default);
        return Call(word, arguments);
    }

    private Value Closed(Value value) => Take(')') ? value : throw new FormatException($"{_text}: a bracket is not closed at {_at}.");

    private static Value Call(string name, List<Value> arguments) => (name, arguments.Count) switch
    {
        ("sqrt", 1) => Each(arguments[0], Math.Sqrt),
        ("exp", 1) => Each(arguments[0], Math.Exp),
        ("ln", 1) => Each(arguments[0], Math.Log),
        ("sin", 1) => Each(arguments[0], Math.Sin),
        ("cos", 1) => Each(arguments[0], Math.Cos),
        ("tan", 1) => Each(arguments[0], Math.Tan),
        ("acos", 1) => Each(arguments[0], Math.Acos),
        ("abs", 1) => Each(arguments[0], Math.Abs),
        ("Phi", 1) => Each(arguments[0], Normal.Below),
        ("z", 1) => Each(arguments[0], Normal.Quantile),
        ("min", 2) => ItemByItem(arguments[0], arguments[1], Math.Min),
        ("max", 2) => ItemByItem(arguments[0], arguments[1], Math.Max),
        ("T", 2) => ItemByItem(arguments[0], arguments[1], StudentT.Below),
        ("t", 2) => ItemByItem(arguments[0], arguments[1], StudentT.Quantile),
        ("g", 2) => ItemByItem(arguments[0], arguments[1], (w, p) => DecisionRule.GuardFactor(w, p) ?? double.NaN),
        ("sum", 1) => Of(List(arguments[0]).Sum()),
        ("count", 1) => Of(List(arguments[0]).Length),
        ("least", 1) => Of(List(arguments[0]).Min()),
        ("greatest", 1) => Of(List(arguments[0]).Max()),
        _ => throw new FormatException($"{name} with {arguments.Count} arguments is not in the notation."),
    };

    private static double[] List(Value value) => value.IsList ? value.Items : throw new FormatException("one number where a list is meant");

    private static Value Of(double value) => new([value], false);

    private static Value Each(Value a, Func<double, double> function) => new([.. a.Items.Select(function)], a.IsList);

    private static Value ItemByItem(Value a, Value b, Func<double, double, double> function) => (a.IsList, b.IsList) switch
    {
        (false, false) => Of(function(a.Items[0], b.Items[0])),
        (true, false) => new([.. a.Items.Select(item => function(item, b.Items[0]))], true),
        (false, true) => new([.. b.Items.Select(item => function(a.Items[0], item))], true),
        _ when a.Items.Length == b.Items.Length => new([.. a.Items.Zip(b.Items, function)], true),
        _ => throw new FormatException("lists of unlike length"),
    };

    private bool Take(char c)
    {
        Skip();
        if (_at >= _text.Length || _text[_at] != c)
            return false;
        _at++;
        return true;
    }

    private void Skip()
    {
        while (_at < _text.Length && _text[_at] == ' ')
            _at++;
    }
}
