using Thoubook.Mechanics.Flow;

namespace Thoubook.Mechanics.Tests.Flow;

public sealed class CentrifugalHeadTests
{
    [Theory]
    [InlineData(500, 1.049, 0.728, 2.913, 6.554)]
    [InlineData(1000, 4.195, 2.913, 11.652, 26.216)]
    [InlineData(2500, 26.216, 18.206, 72.823, 163.851)]
    [InlineData(4500, 84.940, 58.986, 235.945, 530.877)]
    [Computed("hydrostatics of a turning liquid, 850 kg/m³")]
    public void Of_AgreesWithTheTable(double revolutionsPerMinute, double toAxisFrom30, double at25, double at50, double at75)
    {
        var speed = revolutionsPerMinute * Math.PI / 30;
        Outside.Check($"head lost from 30 mm to the axis, {revolutionsPerMinute} rev/min [kPa]", -toAxisFrom30, 1e-3 * CentrifugalHead.Of(speed, 0.03, 0, 850), 6e-4);
        foreach (var (radius, head) in ((double, double)[])[(0.025, at25), (0.05, at50), (0.075, at75)])
            Outside.Check($"head from the axis to {1000 * radius} mm, {revolutionsPerMinute} rev/min [kPa]", head, 1e-3 * CentrifugalHead.Of(speed, 0, radius, 850), 6e-4);
    }

    [Fact]
    public void OutAndBack_GainsNothing() =>
        Assert.Equal(0, CentrifugalHead.Of(200, 0.03, 0.07, 850) + CentrifugalHead.Of(200, 0.07, 0.03, 850), 1e-9);

    [Theory]
    [InlineData(double.NaN, 0, 0, 850)]
    [InlineData(100, -0.1, 0, 850)]
    [InlineData(100, 0, -0.1, 850)]
    [InlineData(100, 0, 0.1, 0)]
    public void Unphysical_IsRefused(double speed, double from, double to, double density) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CentrifugalHead.Of(speed, from, to, density));
}
