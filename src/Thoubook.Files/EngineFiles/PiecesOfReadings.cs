using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;

namespace Thoubook.Files.EngineFiles;

/// <summary>
/// Completes readings as they come in: a reading without a piece belongs to the piece chosen for the part; where none is, the part gets
/// a piece of its own name, chosen for it. A place that the dimension does not have is asked.
/// </summary>
internal sealed class PiecesOfReadings(Scope scope, FactIds ids)
{
    private readonly Dictionary<PartName, PieceTag> _ofParts = [];

    public List<Piece> Made { get; } = [];

    public List<Chosen> Choices { get; } = [];

    public Reading Fill(Reading reading, YamlNode at)
    {
        AskForPlace(reading, at);
        return reading.Piece == default ? reading with { Piece = PieceFor(reading, at) } : reading;
    }

    private PieceTag PieceFor(Reading reading, YamlNode at)
    {
        var part = reading.Figure.Part;
        if (_ofParts.TryGetValue(part, out var tag))
            return tag;
        if (scope.Record.Index.ChosenFor(part) is { } chosen)
        {
            tag = chosen.Piece;
        }
        else if (!PieceTag.TryRead(part.Path, out tag, out _))
        {
            scope.Refuse(at, "piece", "file-piece-missing", "nothing", $"No piece is chosen for {part}, and its name is too long for a tag.", "Write piece: and its tag.");
        }
        else
        {
            if (scope.Record.Index.Piece(tag) is null)
                Made.Add(new Piece(tag) { For = part });
            var choice = new Chosen(default, default, "", tag, part);
            Choices.Add(ids.Sign(choice with { Id = ids.For(Facts.Choices.Section, choice, [tag.Text, part.Path]), At = reading.At, By = reading.By }));
        }

        return _ofParts[part] = tag;
    }

    private void AskForPlace(Reading reading, YamlNode at)
    {
        if (scope.Record.Index.Figure(reading.Figure) is not Dimension { Places: { Count: > 0 } places } || reading.Place == PlaceName.NotNoted || places.Contains(reading.Place))
            return;
        const string Code = "place-new";
        if (FileQuestions.ConfirmedFor(at.Line, scope.Terms.Confirmed).Contains(Code))
            return;
        var nearest = Nearest.Of(reading.Place.Text, places.Select(p => p.Text));
        scope.Refuse(at, "place", FileQuestions.OnLine(
            new Problem(
                Code,
                "",
                $"\"{reading.Place}\"",
                $"The places of {reading.Figure} are {string.Join(", ", places)}.",
                nearest is null ? "Correct the place, or say that it was measured there as well." : $"Did you mean {nearest}? Or say that it was measured there as well.",
                [new Meaning(Code, $"measured at {reading.Place} as well")]),
            at.Line));
    }
}
