namespace Thoubook.Record.Tests;

public sealed class NearestTests
{
    private static readonly string[] Known = ["readings", "findings", "gauges", "parts", "pump/body", "pump/driver"];

    [Theory]
    [InlineData("gages", "gauges")]
    [InlineData("reading", "readings")]
    [InlineData("raedings", "readings")]
    [InlineData("Parts", "parts")]
    [InlineData("pump/bodie", "pump/body")]
    [InlineData("oil", null)]
    [InlineData("", null)]
    public void TheNearestKnownWord_IsFoundWhereItIsNearEnough(string word, string? nearest) => Assert.Equal(nearest, Nearest.Of(word, Known));

    [Fact]
    public void OfTwoEquallyNear_TheFirstIsTaken() => Assert.Equal("bore", Nearest.Of("core", ["bore", "cone"]));
}
