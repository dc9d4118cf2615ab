using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Thoubook.Cli.Answers;

/// <summary>The answers as JSON: written by code made at build time, so that a short answer does not wait for reflection.</summary>
[JsonSerializable(typeof(IReadOnlyList<EngineAnswer>))]
[JsonSerializable(typeof(AppraisalAnswer))]
[JsonSerializable(typeof(ReadAnswer))]
[JsonSerializable(typeof(AskAnswer))]
[JsonSerializable(typeof(RefusedAnswer))]
[JsonSerializable(typeof(RecordedAnswer))]
[JsonSerializable(typeof(DryRunAnswer))]
[JsonSerializable(typeof(ImportedAnswer))]
[JsonSerializable(typeof(IReadOnlyList<ReadingAnswer>))]
[JsonSerializable(typeof(VerifyAnswer))]
[JsonSerializable(typeof(CircuitAnswer))]
[JsonSerializable(typeof(PlanTimesAnswer))]
[JsonSerializable(typeof(CloseupReadyAnswer))]
[JsonSerializable(typeof(CloseupBeforeAnswer))]
[JsonSerializable(typeof(CloseupReachAnswer))]
[JsonSerializable(typeof(CloseupInsideAnswer))]
[JsonSerializable(typeof(LeavingNoteAnswer))]
[JsonSerializable(typeof(StripAnswer))]
[JsonSerializable(typeof(FoundAndLeftAnswer))]
[JsonSerializable(typeof(PermissionAnswer))]
[JsonSerializable(typeof(PurposeAnswer))]
[JsonSerializable(typeof(StatesAnswer))]
[JsonSerializable(typeof(StartedAnswer))]
[JsonSerializable(typeof(IReadOnlyList<StarterAnswer>))]
[JsonSerializable(typeof(SumAnswered))]
[JsonSerializable(typeof(PumpCardAnswer))]
[JsonSerializable(typeof(IReadOnlyList<SumDescribed>))]
[JsonSerializable(typeof(OilShowAnswer))]
[JsonSerializable(typeof(OilMapAnswer))]
[JsonSerializable(typeof(OilRankAnswer))]
[JsonSerializable(typeof(OilFlowTestAnswer))]
[JsonSerializable(typeof(OilTestStoredAnswer))]
internal sealed partial class AnswerJson : JsonSerializerContext
{
    /// <summary>Letters such as ° stand as they are: the answer goes to a terminal or a program, never into a page.</summary>
    public static AnswerJson Shapes { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
