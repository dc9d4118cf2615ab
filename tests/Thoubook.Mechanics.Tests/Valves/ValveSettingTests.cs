using Thoubook.Mechanics.Sums;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Tests.Valves;

public sealed class ValveSettingTests
{
    private const double Seat = 0.014;
    private const double Spring = 2200;

    [Fact]
    [CommonPractice("lapping a valve seat by t lowers the setting by k t/A")]
    public void LappingTheSeat_LowersTheSetting()
    {
        var area = Math.PI * Seat * Seat / 4;
        Outside.CheckRelative("setting lost by lapping 0.1 mm, over k t/A", Spring * 1e-4 / area, 314_413 - ValveSetting.After(314_413, Spring, Seat, 0, 1e-4, default(Silent)), 1e-12);
        Assert.Equal(314_413, ValveSetting.After(314_413, Spring, Seat, 1e-4, 1e-4, default(Silent)), 1e-6);
    }

    [Fact]
    [Computed("spring of 2.2 N/mm on a seat of 14 mm, computed apart from this code to two figures")]
    public void Shim_OfHalfAMillimetre() =>
        Outside.Check("setting gained by 0.5 mm of shim, kPa", 7.1, (ValveSetting.After(0, Spring, Seat, 0.5e-3, 0, default(Silent)) / 1e3), 0.06);

    [Fact]
    public void ShimFor_BringsTheWantedSetting()
    {
        var shim = ValveSetting.ShimFor(3e5, 4.2e5, Spring, Seat);
        Assert.True(shim > 0);
        Assert.Equal(4.2e5, ValveSetting.After(3e5, Spring, Seat, shim, 0, default(Silent)), 1e-6);
        Assert.Equal(-shim, ValveSetting.ShimFor(4.2e5, 3e5, Spring, Seat), 1e-15);
    }

    [Fact]
    public void SeatGap_LeaksWhatWasCaught()
    {
        var gap = ValveSetting.SeatGap(2e-6, 3e5, 0.08, Seat, 1.5e-3);
        var valve = new SpringValve(Closure.Disc(Seat), 100, Spring, 0.01, 0.65) { SeatGap = gap, SeatWidth = 1.5e-3 };
        Assert.Equal(2e-6, valve.At(3e5, 3e5, 0.08, 870).Flow, 1e-18);
    }

    [Fact]
    public void WhatCannotBe_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveSetting.After(3e5, Spring, Seat, 0, -1e-6, default(Silent)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveSetting.ShimFor(3e5, 3e5, 0, Seat));
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveSetting.SeatGap(0, 1, 1, 1, 1));
    }
}
