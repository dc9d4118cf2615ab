#:property PublishAot=false
#:property RestorePackagesWithLockFile=false
// Makes the readings of the invented six-cylinder engine from the sizes that its invented pieces are supposed to have, as a person with these
// gauges would write them down: each gauge has an error of its own, each hand a scatter, each scale a least step.
// dotnet run tools/make-demo-readings.cs [--check]     --check writes nothing and fails where the file would be another
using System.Globalization;
using System.Text;

const string Sizes = "tools/sandpiper-six-sizes.csv";
const string Readings = "demo/sandpiper-six/readings.csv";

// Error, scatter and least step of each gauge: thou, except millimetres for M… in millimetres, and pounds for the spring testers.
var gauges = new Dictionary<string, (decimal Error, decimal Scatter, decimal Step)>
{
    ["M-1"] = (0.02m, 0.04m, 0.1m),
    ["M-2"] = (-0.03m, 0.05m, 0.1m),
    ["M-3"] = (0.04m, 0.05m, 0.1m),
    ["M-5"] = (-0.05m, 0.06m, 0.1m),
    ["MM-1"] = (0.0005m, 0.001m, 0.001m),
    ["MM-2"] = (-0.0006m, 0.001m, 0.001m),
    ["IM-2"] = (0.08m, 0.1m, 0.1m),
    ["IM-4"] = (0.9m, 0.1m, 0.1m),
    ["SB-1"] = (0.03m, 0.05m, 0.05m),
    ["BG-1"] = (-0.04m, 0.05m, 0.1m),
    ["BG-2"] = (0.05m, 0.06m, 0.1m),
    ["BG-4"] = (-0.04m, 0.06m, 0.1m),
    ["MB-1"] = (0.0006m, 0.001m, 0.001m),
    ["MB-2"] = (-0.0005m, 0.001m, 0.001m),
    ["DM-1"] = (0.05m, 0.07m, 0.1m),
    ["MD-1"] = (0.004m, 0.006m, 0.01m),
    ["SG-1"] = (-0.03m, 0.05m, 0.05m),
    ["TH-1"] = (0.01m, 0.02m, 0.05m),
    ["PG-1"] = (0.05m, 0.1m, 0.5m),
    ["F-1"] = (0.1m, 0.2m, 0.5m),
    ["D-1"] = (-0.05m, 0.1m, 0.1m),
    ["V-1"] = (0.3m, 0.4m, 1m),
    ["ST-1"] = (-0.1m, 0.15m, 0.2m),
    ["ST-2"] = (0.03m, 0.05m, 0.1m),
};

var root = FindRoot();
ulong seed = 1936;
var made = new StringBuilder("of,piece,place,value,gauge,temperature,by,at,note\n");
var count = 0;
foreach (var line in File.ReadLines(Path.Combine(root, Sizes)).Skip(1))
{
    // of, piece, size, unit, places, ovality, taper, gauge, each, temperature, by, at, remark
    var cells = line.Split(',');
    decimal Number(int cell) => decimal.Parse(cells[cell], NumberStyles.Float, CultureInfo.InvariantCulture);
    var (size, unit, gauge) = (Number(2), cells[3], gauges[cells[7]]);

    // The gauge table and the form are in thou where the size is in inches.
    var part = unit == "in" ? 0.001m : 1m;
    var step = gauge.Step * part;
    var places = cells[4].Length == 0 ? [""] : cells[4].Split(' ');
    var at = DateTimeOffset.Parse(cells[11], CultureInfo.InvariantCulture);
    for (var round = 0; round < int.Parse(cells[8], CultureInfo.InvariantCulture); round++)
    {
        foreach (var place in places)
        {
            var across = place.Length == 2 && place[1] == '2' ? Number(5) : 0;
            var along = place.Length > 0 && char.IsAsciiLetterUpper(place[0]) ? Number(6) * (place[0] - 'A') : 0;
            var value = size + (part * (across + along + gauge.Error + (gauge.Scatter * HandScatter())));
            var shown = Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
            made.Append(CultureInfo.InvariantCulture, $"{cells[0]},{cells[1]},{place},{Written(shown, unit, step)},{cells[7]},{cells[9]},{cells[10]},{at:yyyy-MM-ddTHH:mm:sszzz},\n");
            at = at.AddMinutes(1);
            count++;
        }
    }
}

var file = Path.Combine(root, Readings);
if (args.Contains("--check"))
{
    var same = File.Exists(file) && File.ReadAllText(file) == made.ToString();
    Console.WriteLine(same ? $"{Readings} is what its sizes make: {count} readings." : $"{Readings} is not what {Sizes} makes. Run: dotnet run tools/make-demo-readings.cs");
    return same ? 0 : 1;
}

File.WriteAllText(file, made.ToString());
Console.WriteLine($"{Readings}: {count} readings.");
return 0;

// A hand never reads the same twice, and from one seed always the same: nearly normal with a standard deviation of one, twelve even draws less six.
decimal HandScatter()
{
    decimal sum = -6;
    for (var i = 0; i < 12; i++)
        sum += (NextDraw() >> 44) / 1048576m;
    return sum;
}

// SplitMix64: whole numbers only, so that every machine draws alike.
ulong NextDraw()
{
    seed += 0x9E3779B97F4A7C15;
    var z = (seed ^ (seed >> 30)) * 0xBF58476D1CE4E5B9;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
    return z ^ (z >> 31);
}

// Inches bare, as they are read off a micrometer: the schedule gives them in inches. Everything else names its unit.
static string Written(decimal value, string unit, decimal step)
{
    var decimals = step.ToString("0.######", CultureInfo.InvariantCulture) is var text && text.IndexOf('.', StringComparison.Ordinal) is var point and >= 0 ? text.Length - point - 1 : 0;
    return unit == "in" ? value.ToString($"F{decimals}", CultureInfo.InvariantCulture) : $"{value.ToString("0.####", CultureInfo.InvariantCulture)} {unit}";
}

static string FindRoot()
{
    for (var at = new DirectoryInfo(Directory.GetCurrentDirectory()); at is not null; at = at.Parent)
    {
        if (File.Exists(Path.Combine(at.FullName, "thoubook.slnx")))
            return at.FullName;
    }

    throw new DirectoryNotFoundException("Run this inside the repository.");
}
