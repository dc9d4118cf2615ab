#:property PublishAot=false
#:property RestorePackagesWithLockFile=false
// Puts together the ledgers that the test programs wrote (artifacts/outside-checks/*.jsonl): every check against the outside, with its source.
// dotnet run tools/ledger.cs [-- --check]     writes docs/outside-checks.md, or with --check fails where the page would be another
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

const string Ledgers = "artifacts/outside-checks";
const string Merged = "artifacts/outside-checks.json";
const string Page = "docs/outside-checks.md";
const int LeastPairs = 150;
const double MostFromMemory = 0.25;

if (!Directory.Exists(Ledgers))
{
    Console.Error.WriteLine($"There is no {Ledgers} here: run the tests first, in the repository.");
    return 1;
}

var lines = Directory.GetFiles(Ledgers, "*.jsonl").Order(StringComparer.Ordinal).SelectMany(File.ReadAllLines).Where(line => line.Length > 0).Select(line => JsonNode.Parse(line)!.AsObject()).ToList();
File.WriteAllText(Merged, "[\n" + string.Join(",\n", lines.Select(line => line.ToJsonString())) + "\n]\n");

var checks = lines
    .GroupBy(line => (Kind: Text(line, "kind"), Source: Text(line, "source"), Quantity: Text(line, "quantity")))
    .Select(group => (group.Key.Kind, group.Key.Source, group.Key.Quantity, Tolerance: group.Max(line => line["tolerance"]!.GetValue<double>()), InWords: group.Any(line => line["expected"]!.GetValueKind() == System.Text.Json.JsonValueKind.String)))
    .OrderBy(check => check.Kind, StringComparer.Ordinal).ThenBy(check => check.Source, StringComparer.Ordinal).ThenBy(check => check.Quantity, StringComparer.Ordinal)
    .ToList();
var kinds = checks.GroupBy(check => check.Kind).ToList();
Console.WriteLine($"{checks.Count} checks against the outside (distinct quantity and source): {string.Join(", ", kinds.Select(kind => $"{kind.Count()} {kind.Key}"))}");

var problems = lines.Where(line => !line["agrees"]!.GetValue<bool>()).Select(line => $"does not agree: {Text(line, "quantity")} ({Text(line, "source")})").Distinct().ToList();
if (checks.Count < LeastPairs)
    problems.Add($"only {checks.Count} checks; at least {LeastPairs} are wanted");
var fromMemory = (double)checks.Count(check => check.Kind == "from memory") / Math.Max(1, checks.Count);
if (fromMemory > MostFromMemory)
    problems.Add(string.Create(CultureInfo.InvariantCulture, $"{fromMemory:P0} of the checks are from memory; at most {MostFromMemory:P0} may be"));

var page = Write();
if (!args.Contains("--check"))
    File.WriteAllText(Page, page);
else if (!File.Exists(Page) || File.ReadAllText(Page) != page)
    problems.Add($"{Page} is not what the tests checked: run every test (dotnet run tools/test.cs), then dotnet run tools/ledger.cs, and look at the difference");

foreach (var problem in problems)
    Console.Error.WriteLine($"Ledger: {problem}.");
return problems.Count == 0 ? 0 : 1;

string Write()
{
    var text = new StringBuilder("""
        # Checks against the outside

        Made by `dotnet run tools/ledger.cs` from what the tests wrote while they ran. Each line is a quantity compared with the value that the source gives, and
        the tolerance, in the unit of the quantity (2 figures; the greatest where one quantity is compared several times). *Published*: seen in print or in a
        public transcription. *From memory*: believed to come from the source named, which was not seen. *Computed*: an independent computation. *Common
        practice*: a rule of the trade. Expected and computed values stand in `artifacts/outside-checks.json` after a run.


        """);
    text.Append("| kind | quantities | sources |\n| --- | ---: | ---: |\n");
    foreach (var kind in kinds)
        text.Append(CultureInfo.InvariantCulture, $"| {kind.Key} | {kind.Count()} | {kind.Select(check => check.Source).Distinct().Count()} |\n");
    foreach (var kind in kinds)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {char.ToUpperInvariant(kind.Key[0])}{kind.Key[1..]}\n");
        foreach (var source in kind.GroupBy(check => check.Source))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n### {source.Key}\n\n| quantity | tolerance |\n| --- | ---: |\n");
            foreach (var check in source)
                text.Append(CultureInfo.InvariantCulture, $"| {check.Quantity.Replace("|", "\\|", StringComparison.Ordinal)} | {(check.InWords ? "in words" : check.Tolerance == 0 ? "exact" : check.Tolerance.ToString("0.0e+0", CultureInfo.InvariantCulture))} |\n");
        }
    }

    return text.ToString();
}

static string Text(JsonObject line, string name) => line[name]!.GetValue<string>();
