using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Web.Pages;
using Thoubook.Web.Pages.Closing;
using Thoubook.Web.Pages.Oil;
using Thoubook.Workshop;
using Thoubook.Workshop.Closing;

namespace Thoubook.Web.Doors;

/// <summary>What every page asks of the workshop: the engine as it stands, or the page that says it is not there.</summary>
internal sealed class Bench(OpenWorkshop workshop)
{
    private readonly ConditionalWeakTable<OilSystem, OilFindings> _oil = [];
    private readonly ConditionalWeakTable<Plan, Lazy<IReadOnlyList<CrewTime>>> _left = [];

    public OpenWorkshop Workshop { get; } = workshop;

    public bool Find(string engine, [NotNullWhen(true)] out EngineAppraisal? appraisal, [NotNullWhen(false)] out IResult? missing)
    {
        appraisal = Appraise(engine).IsOk(out var standing, out var problems) ? standing : null;
        missing = appraisal is null ? NotFound(problems) : null;
        return appraisal is not null;
    }

    public bool Find(string engine, string figure, [NotNullWhen(true)] out EngineAppraisal? appraisal, [NotNullWhen(true)] out FigureAppraisal? found, [NotNullWhen(false)] out IResult? missing)
    {
        found = null;
        if (!Find(engine, out appraisal, out missing))
            return false;
        found = FigureName.TryRead(figure, out var name, out _) ? appraisal[name] : null;
        missing = found is null ? Plain.Answer(StatusCodes.Status404NotFound, "Not here", "This engine has no dimension or fit of that name.") : null;
        return found is not null;
    }

    /// <summary>The oil system of an engine with what it has been asked, or why there is none.</summary>
    public Outcome<OilFindings> Oil(EngineAppraisal engine) => Workshop.Oil(engine.Record.Engine.Name.Text).Then<OilFindings>(system => _oil.GetValue(system, s => new(s)));

    /// <summary>How far an engine is closed up. What the rest takes is worked out once for each state of the record.</summary>
    public Outcome<CloseUpSheet> CloseUp(EngineAppraisal engine, ClosingQuestion asked) => Workshop.ClosingUp(engine.Record.Engine.Name.Text, asked)
        .Then<CloseUpSheet>(closing => new CloseUpSheet(engine, closing, _left.GetValue(closing.Plan, _ => new(() => CloseUpSheet.HoursLeft(closing)))));

    /// <summary>A stroke in a name stays escaped in an address, so that it ends no step of the path.</summary>
    private Outcome<EngineAppraisal> Appraise(string engine) =>
        engine.Contains("%2F", StringComparison.OrdinalIgnoreCase) && Workshop.Appraise(engine.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase)) is Outcome<EngineAppraisal>.Ok found
            ? found
            : Workshop.Appraise(engine);

    private static IResult NotFound(IReadOnlyList<Problem> problems) =>
        Plain.Answer(StatusCodes.Status404NotFound, "Not here", problems is [var first, ..] ? $"{first.Allowed} {first.DoThis}" : "There is nothing of that name.");
}

internal static class Answers
{
    public static RazorComponentResult<T> Page<T>(object parameters, int status = StatusCodes.Status200OK)
        where T : IComponent => new(parameters) { StatusCode = status };

    public static bool IsFragment(this HttpContext context) => context.Request.Headers.ContainsKey("HX-Request");
}

/// <summary>After a post the browser gets the page with a plain GET, so that going back or reloading posts nothing again.</summary>
internal sealed class SeeOther(string address) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
        httpContext.Response.Headers.Location = address;
        return Task.CompletedTask;
    }
}
