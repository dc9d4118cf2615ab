using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Measures;

public sealed class GapTextTests
{
    private static readonly EngineRecord Engine = new(new Engine(new EngineName("Sandpiper six"), Purpose.StandRun))
    {
        Dimensions =
        [
            Dimension("lower-half/pump/body.depth"),
            Dimension("lower-half/pump/drive-gear.width-no-1"),
            Dimension("lower-half/pump.face"),
            Dimension("lower-half/body.depth"),
            Dimension("body.depth"),
            Dimension("crank.throw"),
            Dimension("lower-half/pump/body.angle") with { Kind = QuantityKind.Angle },
        ],
        Fits = [new Fit(FigureName.Of("lower-half/pump.end-float"))],
    };

    private static readonly Fit Fit = Engine.Fits[0];

    [Theory]
    [InlineData("body.depth", "+1 lower-half/pump/body.depth")]
    [InlineData("- body.depth", "-1 lower-half/pump/body.depth")]
    [InlineData("body.depth - drive-gear.width-no-1", "+1 lower-half/pump/body.depth -1 lower-half/pump/drive-gear.width-no-1")]
    [InlineData("body.depth − drive-gear.width-no-1", "+1 lower-half/pump/body.depth -1 lower-half/pump/drive-gear.width-no-1")]
    [InlineData("2 * body.depth + 0.5*face", "+2 lower-half/pump/body.depth +0.5 lower-half/pump.face")]
    [InlineData("1/2 * body.depth", "+0.5 lower-half/pump/body.depth")]
    [InlineData("face", "+1 lower-half/pump.face")]
    [InlineData("crank.throw", "+1 crank.throw")]
    [InlineData("/body.depth - /lower-half/body.depth", "+1 body.depth -1 lower-half/body.depth")]
    [InlineData("pump/body.depth", "+1 lower-half/pump/body.depth")]
    [InlineData("lower-half/pump/body.depth", "+1 lower-half/pump/body.depth")]
    [InlineData(" body.depth\n  - face ", "+1 lower-half/pump/body.depth -1 lower-half/pump.face")]
    public void AGap_IsReadFromTheFitsOwnPartUpwards(string text, string terms)
    {
        Assert.True(GapText.Read(text, Fit, Engine).IsOk(out var read, out var problems), string.Join('\n', problems));
        Assert.Equal(terms, string.Join(' ', read.Select(t => $"{(t.Coefficient > 0 ? "+" : "")}{t.Coefficient} {t.Of}")));

        var written = GapText.Write(Fit with { Gap = read }, Engine);
        Assert.True(GapText.Read(written, Fit, Engine).IsOk(out var again, out _), written);
        Assert.Equal(read, again);
    }

    [Theory]
    [InlineData("body.depth -face", "gap-shape")]
    [InlineData("body.depth face", "gap-shape")]
    [InlineData("body.depth - - face", "gap-shape")]
    [InlineData("body.depth +", "gap-shape")]
    [InlineData("* body.depth", "gap-shape")]
    [InlineData("2 body.depth", "gap-shape")]
    [InlineData("-body.depth", "gap-shape")]
    [InlineData("two * body.depth", "gap-number")]
    [InlineData("0 * body.depth", "gap-number")]
    [InlineData("-2 * body.depth", "gap-number")]
    [InlineData("1.2.3 * body.depth", "gap-number")]
    [InlineData("2 in * body.depth", "gap-shape")]
    [InlineData("body.depht", "gap-unknown")]
    [InlineData("/pump/body.depth", "gap-unknown")]
    [InlineData("1.5", "gap-unknown")]
    [InlineData("end-float", "gap-fit")]
    [InlineData("body.angle", "gap-kind")]
    [InlineData("body.depth + body.depth", "gap-repeated")]
    [InlineData("", "gap-empty")]
    public void AGapThatIsNone_IsRefused(string text, string code)
    {
        Assert.False(GapText.Read(text, Fit, Engine).IsOk(out _, out var problems));
        Assert.Contains(code, problems.Select(p => p.Code));
    }

    [Fact]
    public void AMisspeltName_IsAnsweredWithTheNearest()
    {
        Assert.False(GapText.Read("body.depht - drive-gear.width-no-2", Fit, Engine).IsOk(out _, out var problems));
        Assert.Equal(["Did you mean body.depth?", "Did you mean drive-gear.width-no-1?"], problems.Select(p => p.DoThis));
    }

    private static Dimension Dimension(string name) => new(FigureName.Of(name));
}
