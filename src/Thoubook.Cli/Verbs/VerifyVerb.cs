using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Verbs;

internal static class VerifyVerb
{
    public static readonly Verb Verify = new("verify", "Looks through the store and its files for damage.", Run)
    {
        Options = [Option.Json],
        More = "Exit status 0 when it is sound, 1 when it is not. Nothing is changed.",
        Examples = [new("thoubook verify --workshop ~/boatyard", "after a power cut, or before a backup is thrown away.")],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        var report = workshop.Verify();
        if (request.Has(Option.Json))
        {
            terminal.Json(new VerifyAnswer(report.IsSound, report.Problems, report.Entries, report.Engines, report.Files), AnswerJson.Shapes.VerifyAnswer);
        }
        else
        {
            foreach (var problem in report.Problems)
                terminal.Out.WriteLine(problem);
            terminal.Out.WriteLine($"{(report.IsSound ? "Sound" : "Not sound")}: {report.Entries} entries of {report.Engines} engines, {report.Files} files looked through.");
        }

        return report.IsSound ? ExitStatus.Good : ExitStatus.FallsShort;
    });
}
