using System.Text.RegularExpressions;

namespace Thoubook.Architecture.Tests;

/// <summary>
/// A number that a person wrote is read in one folder only: a posted <c>double</c>, <c>double.Parse</c> and the units library's <c>Parse</c> all take
/// 80,02 for 8002. Whole numbers that are structure (ports, counts of lines) may be read with <c>int.Parse</c>.
/// </summary>
public sealed partial class NumberParsingTests
{
    private const string TheReader = "Thoubook.Record/Quantities/";

    private static readonly (Regex Pattern, string What)[] Forbidden =
    [
        (NumberParse(), "reads a number with Parse or TryParse"),
        (ConvertTo(), "reads a number with Convert"),
        (UnitsNetParse(), "lets the units library read text"),
        (Converter(), "reads text with a type converter"),
        (BoundParameter(), "binds a posted or routed value to a number"),
        (BoundField(), "binds a field of a file to a number"),
        (NumberInput(), "binds a form's field to a number"),
    ];

    [Fact]
    public void Source_ReadsNumbersOnlyInRecordQuantities()
    {
        var files = SourceFiles().ToArray();
        Assert.True(files.Length > 50, "The source files were not found.");
        var offences = files
            .Where(file => !Relative(file).StartsWith("src/" + TheReader, StringComparison.Ordinal))
            .SelectMany(file => Offences(File.ReadAllText(file)).Select(offence => $"{Relative(file)}({offence.Line}) {offence.What}: {offence.Text}"))
            .ToArray();
        Assert.True(offences.Length == 0, string.Join('\n', offences) + "\nRemedy: take the value as text and hand it to QuantityReader.Read with the ReadingContext of its place (Kind = QuantityKind.Number for a plain number).");
    }

    [Theory]
    [InlineData("var x = double.Parse(text);")]
    [InlineData("if (double.TryParse(text, out var x))")]
    [InlineData("if (Double.TryParse(text, out var x))")]
    [InlineData("var x = decimal.Parse(text);")]
    [InlineData("var x = float.TryParse(text, out var y);")]
    [InlineData("var x = BigInteger.Parse(text);")]
    [InlineData("var x = double\n    .Parse(text);")]
    [InlineData("var read = texts.Select(double.Parse);")]
    [InlineData("var x = Convert.ToDouble(text);")]
    [InlineData("var x = Convert.ChangeType(text, typeof(double));")]
    [InlineData("var x = Length.Parse(\"5 mm\");")]
    [InlineData("if (Pressure.TryParse(text, out var p))")]
    [InlineData("var x = UnitsNet.Quantity.Parse(typeof(Length), text);")]
    [InlineData("var x = QuantityParser.Default.Parse<Length>(text);")]
    [InlineData("var c = TypeDescriptor.GetConverter(typeof(double));")]
    [InlineData("sealed class MyConverter : TypeConverter")]
    [InlineData("app.MapPost(\"/x\", ([FromForm] double size) => size);")]
    [InlineData("app.MapPost(\"/x\", ([FromForm(Name = \"s\")] decimal? size) => size);")]
    [InlineData("[SupplyParameterFromForm] public double Size { get; set; }")]
    [InlineData("[SupplyParameterFromQuery] private double? Size { get; set; }")]
    [InlineData("app.MapGet(\"/x/{size}\", (double size) => size);")]
    [InlineData("csv.GetField<double>(0);")]
    [InlineData("deserializer.Deserialize<decimal>(text);")]
    [InlineData("<InputNumber @bind-Value=\"size\" />")]
    [InlineData("<input type=\"number\" name=\"size\">")]
    [InlineData("@page \"/size/{size:double}\"")]
    public void Rule_SeesEveryWayRoundTheReader(string source) => Assert.NotEmpty(Offences(source));

    [Theory]
    [InlineData("var port = int.Parse(text);")]
    [InlineData("var read = QuantityReader.Read(text, context);")]
    [InlineData("// double.Parse would take 80,02 for 8002")]
    [InlineData("/// <summary>Never <c>double.Parse</c>.</summary>")]
    [InlineData("var x = reader.GetDouble(3);")]
    [InlineData("var name = Guid.Parse(text);")]
    [InlineData("var gap = GapText.Parse(text);")]
    [InlineData("public double Size { get; init; }")]
    [InlineData("var when = OffsetDateTimePattern.Rfc3339.Parse(text);")]
    [InlineData("<input type=\"text\" inputmode=\"decimal\" name=\"size\">")]
    public void Rule_LeavesTheRestAlone(string source) => Assert.Empty(Offences(source));

    private static IEnumerable<(int Line, string What, string Text)> Offences(string source)
    {
        // Comments may speak of what is forbidden; they keep their line breaks so that the lines still count.
        var code = LineComment().Replace(source, "");
        foreach (var (pattern, what) in Forbidden)
        {
            foreach (Match match in pattern.Matches(code))
                yield return (code.AsSpan(0, match.Index).Count('\n') + 1, what, match.Value.ReplaceLineEndings(" "));
        }
    }

    private static IEnumerable<string> SourceFiles() => new[] { "*.cs", "*.razor", "*.cshtml" }
        .SelectMany(pattern => Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), pattern, SearchOption.AllDirectories));

    private static string Relative(string file) => Path.GetRelativePath(Repository.Root, file).Replace('\\', '/');

    [GeneratedRegex(@"(?m)^\s*///?.*$|(?<=[;{}\s])//[^""\n]*$", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex LineComment();

    [GeneratedRegex(@"\b(double|Double|float|Single|decimal|Decimal|Half|BigInteger|INumber(Base)?<\w+>)\s*\.\s*(Try)?Parse\b", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex NumberParse();

    [GeneratedRegex(@"\bConvert\s*\.\s*(ToDouble|ToSingle|ToDecimal)\b|\bConvert\s*\.\s*ChangeType\b", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex ConvertTo();

    [GeneratedRegex(@"\b(UnitsNet\.\w+|Length|Temperature|TemperatureDelta|Pressure|Torque|Force|ForcePerLength|Mass|Angle|Area|Volume|VolumeFlow|RotationalSpeed|Duration|KinematicViscosity|DynamicViscosity|Density|Ratio|QuantityParser|UnitParser)\s*\.\s*(Default\s*\.\s*)?(Try)?Parse\b", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex UnitsNetParse();

    [GeneratedRegex(@"\bTypeDescriptor\s*\.\s*GetConverter\b|:\s*TypeConverter\b|\bDoubleConverter\b|\bDecimalConverter\b", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex Converter();

    [GeneratedRegex(@"\[(FromForm|FromQuery|FromRoute|FromHeader|SupplyParameterFromForm|SupplyParameterFromQuery|Parameter,\s*SupplyParameterFromQuery)(\([^)]*\))?\]\s*((public|private|internal|protected|required)\s+)*(double|float|decimal)\b|\bMap(Get|Post|Put|Patch|Delete)\([^;]*?[(,]\s*(double|float|decimal)\??\s+\w+|\{\w+:(double|float|decimal)\b", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex BoundParameter();

    [GeneratedRegex(@"\b(GetField|Deserialize|GetValue|GetRecords)\s*<\s*(double|float|decimal)\??\s*>", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex BoundField();

    [GeneratedRegex(@"<InputNumber\b|<input\b[^>]*\btype=""number""", RegexOptions.ExplicitCapture, 5_000)]
    private static partial Regex NumberInput();
}
