using Thoubook.Mechanics.Circuits;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>Looking things up in a circuit.</summary>
public sealed class CircuitTests
{
    private static readonly Circuit Two = ((CircuitOutcome.Compiled)Circuit.Compile(
        [new("tank", 1e4, 0.3), new("A"), new("sump", 0)],
        [new Pipe("pipe", 0, 1, 0.01, 1, 1e-6), new Orifice("jet", 1, 2, 0.002, 0.7)])).Circuit;

    [Fact]
    public void EveryNumber_IsFoundByItsName()
    {
        var solver = new CircuitSolver(Two);
        Assert.Equal(0.01, solver[Two.Find(Two.Element("pipe"), nameof(Pipe.Bore))]);
        Assert.Equal(0.7, solver[Two.Find(Two.Element("jet"), nameof(Orifice.Discharge))]);
        Assert.Equal(1e4, solver[Two.FindPressure(Two.Node("tank"))]);
        Assert.Equal(0.3, solver[Two.FindHeight(Two.Node("tank"))]);
        Assert.Equal(8 + 2 + 6, Two.ParameterCount);
        Assert.Equal(8, Two.FirstParameter(1));
    }

    [Fact]
    public void ANumberThatAnElementLacks_IsRefused_WithThoseThatItHas()
    {
        Assert.Contains("Bore, Discharge", Assert.Throws<ArgumentException>(() => Two.Find(1, nameof(Pipe.Length))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Two.FindPressure(1));
    }

    [Fact]
    public void AValueThatCannotBe_IsRefused()
    {
        var solver = new CircuitSolver(Two);
        var bore = Two.Find(0, nameof(Pipe.Bore));
        Assert.True(Two.Allows(bore, 1e-3));
        Assert.False(Two.Allows(bore, 0));
        Assert.False(Two.Allows(bore, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => solver[bore] = -1);
    }
}
