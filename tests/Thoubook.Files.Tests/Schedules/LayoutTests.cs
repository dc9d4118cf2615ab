using Thoubook.Files.Schedules;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Tests.Schedules;

/// <summary>Schedules in the layouts that manuals use. All figures invented; expected values worked out by hand.</summary>
public class LayoutTests
{
    private const double Inch = 0.0254;
    private const double Millimetre = 0.001;

    private static void Is(ScheduleRow row, string kind, double? newMin, double? newMax, double? wornMin, double? wornMax, double unit = Inch)
    {
        Assert.True(row.Ask is null, $"row {row.Row} asks: {row.Ask?.Why}");
        Assert.Equal(kind, row.Kind.Word());
        Near(newMin * unit, row.New.Min);
        Near(newMax * unit, row.New.Max);
        Near(wornMin * unit, row.Worn.Min);
        Near(wornMax * unit, row.Worn.Max);

        void Near(double? expected, double? got)
        {
            Assert.True((expected is null) == (got is null), $"row {row.Row} {row.Name}: {got}, expected {expected}");
            if (expected is { } value)
                Assert.Equal(value, got!.Value, 1e-12);
        }
    }

    private static void Asks(ScheduleRow row, string code)
    {
        Assert.True(row.Ask is not null, $"row {row.Row} {row.Name} asks nothing and took {row.New} {row.Worn}");
        Assert.Contains(code, row.Ask.Code, StringComparison.Ordinal);
        Assert.NotEmpty(row.Ask.Meanings);
    }

    [Fact]
    public void BritishLayout_SizesAndClearancesInColumnsOfTheirOwn()
    {
        const string table = """
            SCHEDULE OF FITS AND CLEARANCES (inches),,,,,,
            Ref. No.,Parts and Description,Dimension New,Permissible Worn Dimension,Clearance New,Permissible Worn Clearance,Remarks
            ,CRANKSHAFT,,,,,
            1,Main bearing bore,2.5010-2.5016,2.5030,,,Select
            ,Journal,2.4990/2.4995,2.4975,,,
            ,Journal in bearing,,,.0015 to .0026,.0045,
            2,Crankshaft end float,,,.004-.008,.012,By shims
            3,Thrust washer on case,—,,Light push,n/a,
            4,Liner in block,4.1260-4.1270,Nil,,,
            5,Piston ring gap - compression,,,.015-.020,.045,
            ,Do. - scraper,,,.012-.018,do.,
            6,Gudgeon pin bush in rod,,,-.0025/-.0010,---,Interference
            """;
        var rows = Understood.Read(table).Rows;

        Assert.Equal(12, rows.Length);
        Is(rows[3], "dimension", 2.5010, 2.5016, null, 2.5030);
        Assert.Equal("Select", rows[3].Remark);
        Assert.Equal("1", rows[3].Reference);
        Assert.Equal("crankshaft: Main bearing bore", rows[3].Name);
        Is(rows[4], "dimension", 2.4990, 2.4995, 2.4975, null);
        Is(rows[5], "clearance", .0015, .0026, null, .0045);
        Is(rows[6], "end float", .004, .008, null, .012);
        Is(rows[7], "clearance", null, null, null, null);
        Asks(rows[8], "nil-no-wear-permitted");
        Assert.Equal(4.1260 * Inch, rows[8].New.Min!.Value, 1e-12);
        Is(rows[9], "gap", .015, .020, null, .045);
        Is(rows[10], "gap", .012, .018, null, .045);
        Asks(rows[11], "signs");
    }

    [Fact]
    public void BritishLayout_ClearanceBesideTheSize_IsASecondRelationOfTheSameLine()
    {
        const string table = """
            Description,Dimension new (in),Worn dimension (in),Clearance new (in),Worn clearance (in)
            Valve guide bore,.3430/.3440,.3455,.0020/.0035,.0070
            Valve stem,.3405/.3410,.3385,,
            """;
        var reading = Understood.Read(table);

        Is(reading.Rows[1], "dimension", .3430, .3440, null, .3455);
        Is(Assert.Single(reading.Rows[1].Beside), "clearance", .0020, .0035, null, .0070);
        Is(reading.Rows[2], "dimension", .3405, .3410, .3385, null);
    }

    [Theory]
    [InlineData("no-wear-permitted", NilMeaning.NoWearPermitted)]
    [InlineData("not-a-wear-item", NilMeaning.NotAWearItem)]
    public void Nil_Answered_IsKeptAndAskedNoMore(string answer, NilMeaning expected)
    {
        const string table = "Part,New (in),Worn (in)\nLiner bore,4.1260-4.1270,Nil\n";
        var asked = Understood.Read(table).Rows[1].Ask!;
        var code = Assert.Single(asked.Meanings, meaning => meaning.Code.EndsWith(answer, StringComparison.Ordinal)).Code;

        var row = Understood.Read(table, Understood.Confirming(code)).Rows[1];

        Assert.Null(row.Ask);
        Assert.Equal(expected, row.Nil);
        Assert.Equal(4.1270 * Inch, row.New.Max!.Value, 1e-12);
        Assert.True(row.Worn.IsEmpty);
    }

    [Fact]
    public void Code_OfALineThatHasChangedSince_AnswersNothing()
    {
        const string table = "Part,New (in),Worn (in)\nLiner bore,4.1260-4.1270,Nil\n";
        var code = Understood.Read(table).Rows[1].Ask!.Code;

        var row = Understood.Read(table.Replace("4.1270", "4.1280", StringComparison.Ordinal), Understood.Confirming(code)).Rows[1];

        Assert.NotNull(row.Ask);
    }

    [Fact]
    public void RadialLayout_TightAndLooseByLetter()
    {
        const string table = """
            TABLE OF LIMITS - dimensions in inches,,,,
            Chart Ref.,Description,Minimum,Maximum,Replace if over
            ,FITS,,,
            101,Front main bearing on shaft,0.0005T,0.0015L,0.0030L
            102,Knuckle pin in rod,0.0010T,0.0025T,
            103,Piston pin in piston,0.0000,0.0012L,0.0025L
            104,Crankshaft end clearance,0.006,0.012,0.020
            105,Rocker bushing in rocker,0.0015T,0.0005,
            ,BACKLASH,,,
            201,Magneto drive gears,0.006,0.012,0.018
            ,TORQUE,,,
            301,Cylinder nuts (lbf ft),25,30,
            """;
        var rows = Understood.Read(table).Rows;

        Is(rows[3], "clearance", -0.0005, 0.0015, null, 0.0030);
        Is(rows[4], "interference", -0.0025, -0.0010, null, null);
        Is(rows[5], "clearance", 0, 0.0012, null, 0.0025);
        Is(rows[6], "end float", 0.006, 0.012, null, 0.020);
        Asks(rows[7], "sense");
        Is(rows[9], "backlash", 0.006, 0.012, null, 0.018);

        // 25 lbf ft = 25 * 0.45359237 * 9.80665 * 0.3048 N.m
        Is(rows[11], "torque", 25, 30, null, null, 0.45359237 * 9.80665 * 0.3048);
        Assert.Equal("N.m", rows[11].Unit);
    }

    [Fact]
    public void ArmyLayout_TwoHeadLines_DesiredClearanceIsThatOfTheNewPair()
    {
        const string table = """
            Component,Manufacturer's dimensions in inches,,Desired clearance,,Maximum allowable wear and clearance
            ,Min.,Max.,Min.,Max.,
            Connecting rod:,,,,,
            Bore at crankpin,2.0010,2.0015,---,---,---
            Clearance on crankpin,---,---,0.0010,0.0025,0.0050
            Side float,0.0060,0.0100,---,---,0.0150
            """;
        var rows = Understood.Read(table).Rows;

        Assert.Equal(RowKind.Heading, rows[1].Kind);
        Is(rows[3], "dimension", 2.0010, 2.0015, null, null);
        Is(rows[4], "clearance", 0.0010, 0.0025, null, 0.0050);
        Is(rows[5], "end float", 0.0060, 0.0100, null, 0.0150);
    }

    [Fact]
    public void ShortForm_SemicolonsAndDecimalCommas_ProvedByTheFigures()
    {
        const string table = """
            Point of measurement;New minimum (mm);New maximum (mm);Wear limit (mm)
            Main journal diameter;69,98;70,00;69,90
            Main bearing bore;70,04;70,07;70,15
            Piston pin diameter;21,994;22,000;21,980
            Ring gap;0,30;0,45;1,0
            """;
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "dimension", 69.98, 70.00, 69.90, null, Millimetre);
        Is(rows[2], "dimension", 70.04, 70.07, null, 70.15, Millimetre);
        Is(rows[3], "dimension", 21.994, 22.000, 21.980, null, Millimetre);
        Is(rows[4], "gap", .30, .45, null, 1.0, Millimetre);
    }

    [Fact]
    public void CommaBeforeThreeFigures_WithNothingToProveIt_IsAskedOnEveryRowItTouches_AndAnswered()
    {
        const string table = "Part;New (mm);Worn (mm)\nPin diameter;21,994;21,980\nBush bore;22,010;22,060\nShim thickness;2.5;\n";
        var reading = Understood.Read(table);

        Asks(reading.Rows[1], "decimal-");
        Asks(reading.Rows[2], "decimal-");
        Is(reading.Rows[3], "dimension", 2.5, 2.5, null, null, Millimetre);
        Assert.Single(reading.Questions, question => question.Code.StartsWith("decimal", StringComparison.Ordinal));

        var stated = Understood.Read(table.Replace("2.5", "2,5", StringComparison.Ordinal), new ScheduleOptions { Decimal = DecimalMark.Comma });
        Is(stated.Rows[1], "dimension", 21.994, 21.994, 21.980, null, Millimetre);
    }

    [Fact]
    public void UnitNowhere_IsAskedOnEveryRow_AndAnsweredForTheWholeFile()
    {
        const string table = "Part,New,Worn\nJournal diameter,2.4990-2.4995,2.4975\nEnd float,.004-.008,.012\nFlange thickness,0.25 in,\n";
        var reading = Understood.Read(table);

        Asks(reading.Rows[1], "unit-in");
        Asks(reading.Rows[2], "unit-in");
        Is(reading.Rows[3], "dimension", 0.25, 0.25, null, null);
        Assert.True(reading.Rows[1].New.IsEmpty);
        Assert.Single(reading.Questions);

        Is(Understood.Read(table, new ScheduleOptions { Unit = StatedUnit.Inch }).Rows[1], "dimension", 2.4990, 2.4995, 2.4975, null);
        Is(Understood.Read(table, Understood.Confirming("unit-in")).Rows[2], "end float", .004, .008, null, .012);
    }

    [Fact]
    public void UnitsInCells_ThouFractionsMixedSystemsAndTolerances()
    {
        const string table = """"
            Part,New,Worn,Remarks
            Cylinder bore,79.50 mm,79.75 mm,
            Piston skirt,79.42 mm ± 0.01,79.30 mm,
            Big end clearance,1 1/2 - 2 1/2 thou,5 thou,
            Rocker shaft diameter,5/8 in,.623 in,
            Gudgeon pin,7/8 in +.0000 -.0002 in,.873 in,
            Plug gap,"0.025""",,
            Rod side clearance,0.10-0.25 mm (0.004-0.010 in),0.40 mm (0.016 in),
            Valve stem,8.00 mm (0.415 in),7.95 mm,
            Cap nuts,45 lbf ft,,
            """";
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "dimension", 79.50, 79.50, null, 79.75, Millimetre);
        Is(rows[2], "dimension", 79.41, 79.43, 79.30, null, Millimetre);
        Is(rows[3], "clearance", .0015, .0025, null, .005);
        Is(rows[4], "dimension", .625, .625, .623, null);
        Is(rows[5], "dimension", .8748, .875, .873, null);
        Is(rows[6], "gap", .025, .025, null, null);
        Is(rows[7], "end float", .10, .25, null, .40, Millimetre);
        Asks(rows[8], "repeat");
        Assert.Equal("torque", rows[9].Kind.Word());
    }

    [Fact]
    public void TwoSystemsSideBySide_FirstPrintedCounts_SecondChecks()
    {
        const string table = """
            Part,Feature,Std (mm),Limit (mm),Std (in),Limit (in)
            Cylinder,Bore,68.00-68.02,68.10,2.6772-2.6780,2.6811
            ,Taper,0-0.01,0.05,0-0.0004,0.0020
            Piston ring,Side clearance,0.02-0.06,0.15,0.0008-0.0024,0.006
            Crankshaft,End play,0.10-0.30,0.50,0.0039-0.0118,0.030
            """;
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "dimension", 68.00, 68.02, null, 68.10, Millimetre);
        Is(rows[2], "other", 0, 0.01, null, 0.05, Millimetre);
        Assert.Equal("Cylinder: Taper", rows[2].Name);
        Is(rows[3], "clearance", 0.02, 0.06, null, 0.15, Millimetre);
        Asks(rows[4], "repeat");
    }

    [Fact]
    public void MatchedPairs_ShaftHoleAndClearanceOnOneLine()
    {
        const string table = """
            Pair,Shaft size (mm),Hole size (mm),Matched clearance (mm),Wear limit (mm)
            Camshaft - bush,44.95-44.98,45.00-45.03,0.02-0.08,0.15
            """;
        var row = Understood.Read(table).Rows[1];

        Is(row, "clearance", 0.02, 0.08, null, 0.15, Millimetre);
        Is(row.Beside[0], "dimension", 45.00, 45.03, null, null, Millimetre);
        Is(row.Beside[1], "dimension", 44.95, 44.98, null, null, Millimetre);
    }

    [Theory]
    [InlineData("Bore (in)", "min above max", "2.5016", "2.5010", "2.5030", "order")]
    [InlineData("Bore (in)", "worn inside new", "2.5010", "2.5016", "2.5012", "worn-inside")]
    [InlineData("Bore (in)", "worn on the wrong side", "2.5010", "2.5016", "2.4990", "wear-way")]
    [InlineData("Journal (in)", "worn on the wrong side", "2.4990", "2.4995", "2.5005", "wear-way")]
    [InlineData("Bore (in)", "worn ten times off", "2.5010", "2.5016", "25.030", "worn-far")]
    [InlineData("Clearance (in)", "worn ten times off", "0.0015", "0.0026", "0.045", "worn-far")]
    [InlineData("Clearance (in)", "maximum ten times off", "0.0015", "0.026", "0.045", "wide")]
    [InlineData("Clearance (in)", "formula", "=1+1", "0.0026", "0.0045", "figure")]
    [InlineData("Clearance (in)", "two points", "0.0.015", "0.0026", "0.0045", "figure")]
    [InlineData("Clearance (in)", "lost point", "00015", "0.0026", "0.0045", "figure")]
    [InlineData("Clearance (in)", "doubtful mark", "0.0015?", "0.0026", "0.0045", "figure")]
    [InlineData("Clearance (in)", "brackets alone", "(0.0015)", "0.0026", "0.0045", "brackets")]
    [InlineData("Clearance (in)", "range in a minimum", "0.0015-0.0020", "0.0026", "0.0045", "range")]
    [InlineData("Clearance (in)", "worn range", "0.0015", "0.0026", "0.0045-0.0060", "worn-range")]
    [InlineData("Clearance (in)", "other unit unknown", "0.0015 xx", "0.0026", "0.0045", "unit")]
    [InlineData("Clearance (in)", "another quantity", "0.0015", "0.0026 kg", "0.0045", "unit")]
    public void RowThatContradictsItself_IsAsked(string name, string why, string min, string max, string worn, string code)
    {
        var rows = Understood.Read($"Part,Minimum (in),Maximum (in),Wear limit (in)\n{name},{min},{max},{worn}\n").Rows;

        Asks(rows[1], code);
        Assert.NotEmpty(why);
    }

    [Fact]
    public void PairThatDoesNotLeaveItsClearance_IsAsked()
    {
        const string table = "Part,New (in),Worn (in)\nMain bearing bore,2.5010-2.5016,2.5030\nMain journal,2.4990-2.4995,2.4975\nClearance,.015-.026,.045\n";

        Asks(Understood.Read(table).Rows[3], "pair");
    }

    [Fact]
    public void Columns_InAnyOrder_MeanTheSame()
    {
        string[][] cells =
        [
            ["Description", "Minimum (in)", "Maximum (in)", "Worn limit (in)", "Remarks"],
            ["Main bearing bore", "2.5010", "2.5016", "2.5030", "select"],
            ["Main journal diameter", "2.4990", "2.4995", "2.4975", ""],
            ["Crankshaft end float", ".004", ".008", ".012", ""],
        ];
        var straight = Understood.Read(string.Join('\n', cells.Select(line => string.Join(',', line)))).Rows;
        int[][] orders = [[4, 3, 2, 1, 0], [1, 0, 2, 4, 3], [3, 0, 4, 1, 2]];
        foreach (var order in orders)
        {
            var shuffled = Understood.Read(string.Join('\n', cells.Select(line => string.Join(',', order.Select(column => line[column]))))).Rows;
            for (var row = 1; row < straight.Length; row++)
                Assert.Equal((straight[row].Name, straight[row].New, straight[row].Worn, straight[row].Kind, straight[row].Ask), (shuffled[row].Name, shuffled[row].New, shuffled[row].Worn, shuffled[row].Kind, shuffled[row].Ask));
        }
    }

    [Fact]
    public void RulesInWords_AreAskedAndNeverWorkedOut()
    {
        const string table = "Cylinder bore wear,\".002\"\" per inch of diameter\"\nCrankshaft end play,\".005\"\" over high limit\"\nPiston pin wear,\".001\"\" total wear\"\n";
        var rows = Understood.Read(table).Rows;

        Asks(rows[0], "rule");
        Assert.Equal(new WearRule(0.002, null, "diameter", "new"), rows[0].Rule);
        Asks(rows[1], "rule");
        Assert.Equal(0.005 * Inch, rows[1].Rule!.Add!.Value, 1e-12);
        Assert.Equal("new_max", rows[1].Rule!.MeasuredFrom);
        Assert.Null(rows[2].Ask);
        Assert.Equal(0.001 * Inch, rows[2].WearAmount!.Value, 1e-12);
        Assert.All(rows, row => Assert.True(row.New.IsEmpty && row.Worn.IsEmpty));
    }

    [Fact]
    public void HeadingsThatSayNeitherNewNorWorn_AreAsked_AndAnsweredForTheTable()
    {
        const string table = "Fit,Limits in thou\nMain bearing clearance,1.5 - 2.6\n";

        Asks(Understood.Read(table).Rows[1], "limits-new");
        Is(Understood.Read(table, Understood.Confirming("limits-new")).Rows[1], "clearance", .0015, .0026, null, null);
    }

    [Fact]
    public void Mapping_WorkedOut_IsKeptAsText_AndStatedAgain()
    {
        const string table = "Description,Minimum (in),Maximum (in),Worn limit (in)\nMain bearing bore,2.5010,2.5016,2.5030\n";
        var first = Understood.Read(table);
        Assert.Equal("1: description\n2: new min in\n3: new max in\n4: worn in\n", first.Mapping.ToString());

        Assert.True(ScheduleMapping.Read(first.Mapping.ToString(), "columns.txt").IsOk(out var kept, out _));
        Assert.Equal(first.Mapping, kept);

        // The same columns without any headings.
        var bare = Understood.Read("Main bearing bore,2.5010,2.5016,2.5030\n", new ScheduleOptions { Mapping = kept });
        Is(bare.Rows[0], "dimension", 2.5010, 2.5016, null, 2.5030);
    }

    [Theory]
    [InlineData("2 new min", 1)]
    [InlineData("1: description\n2: fresh", 2)]
    [InlineData("1: description\n1: new", 2)]
    [InlineData("", 1)]
    [InlineData("0: new", 1)]
    public void Mapping_NotUnderstood_IsRefusedWithItsLine(string text, int line)
    {
        Assert.False(ScheduleMapping.Read(text, "columns.txt").IsOk(out _, out var problems));
        Assert.Equal(line, problems[0].At!.Line);
    }

    [Fact]
    public void NominalSize_BesideTheLimits_IsNone()
    {
        const string table = "Part,Nominal size (mm),Standard (mm),Limit (mm)\nCylinder bore,80,80.000-80.019,80.20\nPin diameter,20,19.990-19.996,19.95\n";
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "dimension", 80.000, 80.019, null, 80.20, Millimetre);
        Is(rows[2], "dimension", 19.990, 19.996, 19.95, null, Millimetre);
    }

    [Fact]
    public void LimitsOfTheSameSort_GivenTwice_AreAsked()
    {
        const string table = "Part,New dimension (mm),New (mm),Worn (mm)\nCylinder bore,80.05,80.000-80.019,80.20\n";

        Asks(Understood.Read(table).Rows[1], "twice");
    }

    [Theory]
    [InlineData("Bore,2O.00,20.10")]
    [InlineData("Bore,20.0l,20.10")]
    [InlineData("Bore,20.00,2O.10")]
    [InlineData("Bore,20.0O1,20.10")]
    [InlineData("Bore,20 .00,20.10")]
    [InlineData("Bore,20.00 - 20,20.10")]
    [InlineData("Bore,20.00 12.00,20.10")]
    [InlineData("Bore,20.00-20.02-20.10,")]
    [InlineData("Maximum permissible bore,20.00,")]
    [InlineData("Compression ratio,6.5,")]
    [InlineData("Ball release load,12-16,")]
    [InlineData("Valve timing,10,")]
    [InlineData("Bearing nip,0.10-0.15,")]
    [InlineData("Pin fit,-0.01,")]
    [InlineData("Pin,0.02-0.05,0.10")]
    [InlineData("Bore,84 in,84.1")]
    [InlineData("Pin fit,0.25 tight to 0.012 loose,")]
    [InlineData("Bush in rod,0.38 tight,")]
    public void OneCellThatMayMeanSomethingElse_IsNotTaken(string line)
    {
        var row = Understood.Read($"Part,New (mm),Worn (mm)\n{line}\n").Rows[1];

        Assert.True(row.Ask is not null, $"{line}: {row.New} {row.Worn}");
    }

    [Theory]
    [InlineData("Oil clearance max.", "0.05", null, 0.05)]
    [InlineData("Oil clearance", "≤0.05", null, 0.05)]
    [InlineData("Oil clearance", "max 0.05", null, 0.05)]
    [InlineData("Oil clearance", "not over 0.05", null, 0.05)]
    [InlineData("Oil clearance", "> 0.05", 0.05, null)]
    [InlineData("Minimum oil clearance", "0.05", 0.05, null)]
    [InlineData("Oil clearance", "0.05 0.08", 0.05, 0.08)]
    [InlineData("Oil clearance", "0.05 to 0.08", 0.05, 0.08)]
    [InlineData("Oil clearance", "0.05–0.08", 0.05, 0.08)]
    [InlineData("Oil clearance", "nil to 0.08", 0.0, 0.08)]
    public void OneEnd_IsThatEndOnly(string name, string cell, double? min, double? max) =>
        Is(Understood.Read($"Part,New (mm),Worn (mm)\n{name},{cell},\n").Rows[1], "clearance", min, max, null, null, Millimetre);

    [Theory]
    [InlineData("Big end clearance", "clearance")]
    [InlineData("Big end side clearance", "end float")]
    [InlineData("Piston ring end clearance", "gap")]
    [InlineData("Piston ring side clearance", "clearance")]
    [InlineData("Crankshaft end play", "end float")]
    [InlineData("Pressure pump gear end float", "end float")]
    [InlineData("Taper pin clearance", "clearance")]
    [InlineData("Flywheel run-out", "other")]
    [InlineData("Crankpin taper", "other")]
    [InlineData("Timing gears - backlash", "backlash")]
    [InlineData("Rings: gap in bore", "gap")]
    public void Kind_IsToldByTheWords(string name, string kind) =>
        Assert.Equal(kind, Understood.Read($"Part,New (mm),Worn (mm)\n{name},0.05-0.08,0.12\n").Rows[1].Kind.Word());

    [Fact]
    public void TorqueColumn_ItsUnitIsNoLength()
    {
        const string table = "Fastener,Torque (lbf ft)\nMain bearing cap bolts,85-95\nPump gear end float,0.003\n";
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "torque", 85, 95, null, null, 0.45359237 * 9.80665 * 0.3048);
        Asks(rows[2], "unit");
    }

    [Fact]
    public void InchesAndMillimetres_UnderSpanningHeads()
    {
        const string table = """
            Item,Inches,,,Millimeters,,
            ,Min.,Max.,Wear limit,Min.,Max.,Wear limit
            Crankshaft,,,,,,
            Main journal dia.,2.4990,2.4995,2.4975,63.475,63.487,63.436
            End play,0.004,0.010,0.014,0.10,0.25,0.36
            Ring gap:,,,,,,
            Top,0.015,0.025,0.060,0.38,0.64,1.52
            Oil,0.010,0.020,0.060,0.25,0.51,0.15
            """;
        var rows = Understood.Read(table).Rows;

        Is(rows[3], "dimension", 2.4990, 2.4995, 2.4975, null);
        Is(rows[4], "end float", 0.004, 0.010, null, 0.014);
        Is(rows[6], "gap", 0.015, 0.025, null, 0.060);
        Asks(rows[7], "repeat");
    }

    [Fact]
    public void NewAndWorn_BesideClearances_AreThoseOfTheSize()
    {
        const string table = "No.;Part;New (mm);Worn (mm);Clearance new (mm);Clearance worn (mm)\n1;Crank pin;52,97 - 52,98;52,85;0,03 - 0,06;0,15\n;Rod bearing bore;53,01-53,03;53,10;;\n";
        var rows = Understood.Read(table).Rows;

        Is(rows[1], "dimension", 52.97, 52.98, 52.85, null, Millimetre);
        Is(Assert.Single(rows[1].Beside), "clearance", 0.03, 0.06, null, 0.15, Millimetre);
        Is(rows[2], "dimension", 53.01, 53.03, null, 53.10, Millimetre);
    }

    [Fact]
    public void LengthsInInchesOrMillimetres_TheSameSchedule_GivesTheSameLimits()
    {
        // 1 in = 25.4 mm exactly, so these four are the same lengths to the last place.
        var inches = Understood.Read("Part,Min (in),Max (in),Worn (in)\nMain bearing bore,2.5000,2.5005,2.5020\nEnd float,0.0050,0.0100,0.0150\n").Rows;
        var millimetres = Understood.Read("Part,Min (mm),Max (mm),Worn (mm)\nMain bearing bore,63.5000,63.5127,63.5508\nEnd float,0.1270,0.2540,0.3810\n").Rows;
        var commas = Understood.Read("Part;Min (mm);Max (mm);Worn (mm)\nMain bearing bore;63,5000;63,5127;63,5508\nEnd float;0,1270;0,2540;0,3810\n").Rows;
        for (var row = 1; row < inches.Length; row++)
        {
            foreach (var other in new[] { millimetres[row], commas[row] })
            {
                Assert.Null(other.Ask);
                Assert.Equal(inches[row].Kind, other.Kind);
                Assert.Equal(inches[row].New.Min!.Value, other.New.Min!.Value, 1e-15);
                Assert.Equal(inches[row].New.Max!.Value, other.New.Max!.Value, 1e-15);
                Assert.Equal(inches[row].Worn.Max!.Value, other.Worn.Max!.Value, 1e-15);
            }
        }
    }
}
