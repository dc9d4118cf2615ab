using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Sheets;

/// <summary>The addresses of the sheets by which an engine is closed up. A step and a space keep their own names.</summary>
internal static partial class Where
{
    public static string CloseUp(EngineName engine) => $"{Bench(engine)}/close-up";

    public static string Step(EngineName engine, StepName step) => $"{CloseUp(engine)}/steps/{step}";

    public static string Space(EngineName engine, SpaceName space) => $"{CloseUp(engine)}/spaces/{space}";

    public static string BenchSheets(EngineName engine) => $"{CloseUp(engine)}/sheets";

    public static string Departures(EngineName engine) => $"{Bench(engine)}/departures";
}
