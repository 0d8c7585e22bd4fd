using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Readings become blocks of a second at least; a gauge of class 1 to 1.6 MPa, 16 kPa of error; one cylinder of 13.5 kg.</summary>
public class ReadingIntakeTests
{
    private static readonly Workbench Bench = new();

    [Fact]
    public void Readings_of_a_second_are_averaged()
    {
        ReadingIntake intake = Intake();
        List<EstimatorBlock> blocks = Add(intake, R(0, 9e5, 13.5), R(0.5, 8e5, 13.5), R(1.0, 7e5, 13.504), R(1.5, 7e5, 13.506) with { AirTemperature = 300 }, R(2.6, 6e5, 13.508));
        Assert.Equal(3, blocks.Count);
        Assert.Equal([0, 1, 2.6], [blocks[0].Time, blocks[1].Time, blocks[2].Time]);
        Assert.Equal(0, blocks[0].Duration);
        Assert.Equal(9e5, blocks[0].Gauge);
        Assert.Equal(double.NaN, blocks[0].Delivered);
        Assert.Equal(1, blocks[1].Duration);
        Assert.Equal(7.5e5, blocks[1].Gauge);
        Assert.Equal(0.002, blocks[1].Delivered, 1e-9);
        Assert.Equal(1.6, blocks[2].Duration, 1e-9);
        Assert.Equal(6.5e5, blocks[2].Gauge);
        Assert.Equal(0.007, blocks[2].Delivered, 1e-9);
        Assert.Equal(295, blocks[1].AirTemperature);
        Assert.Equal(300, blocks[2].AirTemperature);
        Assert.True(blocks[2].IsDrawing);
        Assert.Equal(2.6, intake.Last.Time);
        Assert.Equal(UnusedReadings.None, intake.NotUsed);
    }

    [Theory]
    [InlineData("gauge NaN", UnusedReadings.GaugeNotANumber)]
    [InlineData("gauge infinite", UnusedReadings.GaugeNotANumber)]
    [InlineData("gauge 2.09 MPa", UnusedReadings.None)]
    [InlineData("gauge 2.10 MPa", UnusedReadings.GaugeOutOfRange)]
    [InlineData("gauge -115 kPa", UnusedReadings.None)]
    [InlineData("gauge -117 kPa", UnusedReadings.GaugeOutOfRange)]
    [InlineData("valve shut", UnusedReadings.GaugeShutOff)]
    [InlineData("weight NaN", UnusedReadings.WeightNotANumber)]
    [InlineData("weight 2e5", UnusedReadings.WeightOutOfRange)]
    [InlineData("weight 15", UnusedReadings.WeightJumped)]
    [InlineData("air 173.1 K", UnusedReadings.TemperatureOutOfRange)]
    [InlineData("air 173.2 K", UnusedReadings.None)]
    [InlineData("air 403.2 K", UnusedReadings.TemperatureOutOfRange)]
    [InlineData("air 403.1 K", UnusedReadings.None)]
    [InlineData("pipe 403.2 K", UnusedReadings.TemperatureOutOfRange)]
    [InlineData("pipe 173.2 K", UnusedReadings.None)]
    [InlineData("pipe 173.1 K", UnusedReadings.TemperatureOutOfRange)]
    [InlineData("pipe 403.1 K", UnusedReadings.None)]
    [InlineData("discharge 9.9 MPa", UnusedReadings.None)]
    [InlineData("discharge 10.1 MPa", UnusedReadings.DischargeOutOfRange)]
    [InlineData("discharge infinite", UnusedReadings.DischargeOutOfRange)]
    [InlineData("discharge -50 kPa", UnusedReadings.None)]
    [InlineData("discharge -117 kPa", UnusedReadings.DischargeOutOfRange)]
    public void What_cannot_be_is_left_out_and_named(string what, UnusedReadings expected)
    {
        RawReading bad = what switch
        {
            "gauge NaN" => R(1, double.NaN, 13.5),
            "gauge infinite" => R(1, double.PositiveInfinity, 13.5),
            "gauge 2.09 MPa" => R(1, 2.09e6, 13.5),
            "gauge 2.10 MPa" => R(1, 2.10e6, 13.5),
            "gauge -115 kPa" => R(1, -115e3, 13.5),
            "gauge -117 kPa" => R(1, -117e3, 13.5),
            "valve shut" => R(1, 4e5, 13.5) with { IsValveOpen = false },
            "weight NaN" => R(1, 4e5, double.NaN),
            "weight 2e5" => R(1, 4e5, 2e5),
            "weight 15" => R(1, 4e5, 15),
            "discharge 9.9 MPa" => R(1, 4e5, 13.5) with { DischargeGaugePressure = 9.9e6 },
            "discharge 10.1 MPa" => R(1, 4e5, 13.5) with { DischargeGaugePressure = 10.1e6 },
            "discharge infinite" => R(1, 4e5, 13.5) with { DischargeGaugePressure = double.PositiveInfinity },
            "discharge -50 kPa" => R(1, 4e5, 13.5) with { DischargeGaugePressure = -50e3 },
            "discharge -117 kPa" => R(1, 4e5, 13.5) with { DischargeGaugePressure = -117e3 },
            _ when what.StartsWith("air", StringComparison.Ordinal) => R(1, 4e5, 13.5) with { AirTemperature = double.Parse(what[4..9], System.Globalization.CultureInfo.InvariantCulture) },
            _ => R(1, 4e5, 13.5) with { PipeTemperature = double.Parse(what[5..10], System.Globalization.CultureInfo.InvariantCulture) },
        };
        ReadingIntake intake = Intake();
        List<EstimatorBlock> blocks = Add(intake, R(0, 4e5, 13.5), bad);
        Assert.Equal(expected, intake.NotUsed);
        bool isGauge = what.StartsWith("gauge", StringComparison.Ordinal) || what.StartsWith("valve", StringComparison.Ordinal);
        Assert.Equal(isGauge && expected != UnusedReadings.None, double.IsNaN(blocks[1].Gauge) && (isGauge || what.StartsWith("weight", StringComparison.Ordinal)));
        Assert.Equal(what.StartsWith("weight", StringComparison.Ordinal), double.IsNaN(blocks[1].Delivered));
        Assert.Equal(what is "air 173.2 K" or "air 403.1 K", blocks[1].AirTemperature != 295);
        Assert.Equal(what is "pipe 173.2 K" or "pipe 403.1 K", !double.IsNaN(blocks[1].PipeTemperature));
        Add(intake, R(2, 4e5, 13.5));
        Assert.Equal(UnusedReadings.None, intake.NotUsed);
    }

    /// <summary>What is not given is not named.</summary>
    [Fact]
    public void What_was_not_read_is_no_fault()
    {
        ReadingIntake intake = Intake();
        List<EstimatorBlock> blocks = Add(intake, new RawReading(0), new RawReading(1));
        Assert.Equal(UnusedReadings.None, intake.NotUsed);
        Assert.Equal(double.NaN, blocks[1].Gauge);
        Assert.Equal(double.NaN, blocks[1].Delivered);
        Assert.Equal(double.NaN, blocks[1].PipeTemperature);
        Assert.Equal(double.NaN, blocks[1].CondensingTemperature);
    }

    [Fact]
    public void A_time_that_is_left_out_is_named_at_once_and_its_reading_does_not_count()
    {
        ReadingIntake intake = Intake();
        Add(intake, R(0, 4e5, 13.5), R(1, 4e5, 13.5));
        Assert.Empty(Add(intake, R(1, 9e5, 13.5)));
        Assert.Equal(UnusedReadings.TimeNotLater, intake.NotUsed);
        List<EstimatorBlock> blocks = Add(intake, R(1.5, 4e5, 13.5), R(1.2, 9e5, 13.5), R(2, 4e5, 13.5));
        Assert.Equal(4e5, Assert.Single(blocks).Gauge);
        Assert.Equal(UnusedReadings.TimeNotLater, intake.NotUsed);
        Add(intake, R(3, 4e5, 13.5));
        Assert.Equal(UnusedReadings.None, intake.NotUsed);
    }

    /// <summary>The discharge pressure tells the condensing temperature, of one block.</summary>
    [Fact]
    public void A_discharge_pressure_tells_the_condensing_temperature()
    {
        ReadingIntake intake = Intake();
        List<EstimatorBlock> blocks = Add(intake, R(0, 4e5, 13.5), R(1, 4e5, 13.5) with { DischargeGaugePressure = 7e5, PipeTemperature = 281 }, R(2, 4e5, 13.5));
        Assert.Equal(Fluid.Get("R-134a").Model.SaturationAtPressure(8e5).Bubble.Temperature, blocks[1].CondensingTemperature, 0.02);
        Assert.Equal(281, blocks[1].PipeTemperature);
        Assert.Equal(double.NaN, blocks[2].CondensingTemperature);
        Assert.Equal(double.NaN, blocks[2].PipeTemperature);
    }

    /// <summary>Where the gauge shows what the discharge does, vapor flows through the machine by itself: what comes is the scale's, and the gauge is the cylinder's.</summary>
    [Fact]
    public void Vapor_that_comes_by_itself_is_taken_from_the_scale()
    {
        ReadingIntake intake = Intake();
        intake.ExpectedFlow = 0.01;
        EstimatorBlock block = Add(intake, Passing(0, 13.5), Passing(1, 13.52), Passing(2, 13.58))[2];
        Assert.True(block.IsByItself);
        Assert.Equal(double.NaN, block.Gauge);
        Assert.Equal(0.08, block.Delivered, 1e-9);

        // 60 g came in the second, of which the machine draws 10 g.
        Assert.Equal(0.05, block.Passed, 1e-9);
        block = Assert.Single(Add(intake, Passing(3, 13.57)));
        Assert.Equal(0, block.Passed);

        // 20 g were missing of the last second: they are taken off the next.
        block = Assert.Single(Add(intake, Passing(4, 13.65)));
        Assert.Equal(0.08 - 0.01 - 0.02, block.Passed, 1e-9);
        block = Assert.Single(Add(intake, R(5, 2e5, 13.66)));
        Assert.False(block.IsByItself);
        Assert.Equal(2e5, block.Gauge);
        Assert.Equal(0, block.Passed);

        static RawReading Passing(double time, double weight) => R(time, 3e5, weight) with { DischargeGaugePressure = 3.05e5 };
    }

    /// <summary>A gauge beyond its range that shows what the discharge does tells as much.</summary>
    [Fact]
    public void A_gauge_beyond_its_range_at_the_discharge_pressure_shows_the_cylinder()
    {
        foreach ((double discharge, bool isByItself) in new[] { (2.5e6 + 15e3, true), (2.5e6 + 17e3, false) })
        {
            ReadingIntake intake = Intake();
            EstimatorBlock block = Add(intake, R(0, 2.5e6, 13.5), R(1, 2.5e6, 13.5) with { DischargeGaugePressure = discharge })[1];
            Assert.Equal(isByItself, block.IsByItself);
        }
    }

    /// <summary>Liquid: the scale alone says how much, and the machine draws no vapor meanwhile.</summary>
    [Fact]
    public void Liquid_is_the_scales()
    {
        ReadingIntake intake = Intake();
        intake.ExpectedFlow = 0.005;
        double weight = 13.5;
        double moved = 0;
        double drawn = 0;
        bool was = false;
        for (int t = 0; t <= 60; t++)
        {
            weight += t is > 10 and <= 40 ? 0.3 : 0.005;
            EstimatorBlock block = Assert.Single(Add(intake, R(t, 3e5, weight)));
            was |= intake.Scale.IsLiquid;
            moved += block.LiquidMoved;
            drawn += block.IsDrawing ? 0.005 * block.Duration : 0;
            Assert.True(!intake.Scale.IsLiquid || (double.IsNaN(block.Gauge) && !block.IsDrawing));
            Assert.True(!intake.Scale.IsDoubtful || (double.IsNaN(block.Gauge) && double.IsNaN(block.Delivered)));
        }

        Assert.True(was);

        // What is moved as liquid and what the machine was thought to draw is what the scale has gained, to what came before it was known that it is vapor again.
        Assert.Equal(weight - 13.505, moved + drawn, 0.15);
    }

    /// <summary>A cylinder that loses weight: what runs back counts as less than none moved.</summary>
    [Fact]
    public void What_runs_back_is_counted_back()
    {
        ReadingIntake intake = Intake();
        double moved = 0;
        for (int t = 0; t <= 100; t++)
        {
            EstimatorBlock block = Assert.Single(Add(intake, R(t, 3e5, 13.5 - (0.01 * t)) with { IsMachineRunning = false }));
            moved += block.LiquidMoved;
            Assert.False(block.IsDrawing);
        }

        Assert.True(intake.Scale.IsFalling);
        Assert.InRange(moved, -1, -0.6);
    }

    /// <summary>A gap in which a lighter cylinder came onto the scale, or a labelled one, is one of nobody drawing.</summary>
    [Theory]
    [InlineData(100, 12.4, -1, false)]
    [InlineData(80, 12.4, -1, true)]
    [InlineData(100, 12.9, -1, true)]
    [InlineData(35, 13.7, 1, false)]
    [InlineData(25, 13.7, 1, true)]
    [InlineData(35, 13.7, 0, true)]
    public void Nobody_draws_while_cylinders_are_changed(double gap, double weight, int label, bool isDrawing)
    {
        ReadingIntake intake = Intake();
        Add(intake, R(0, 3e5, 13.5), R(1, 3e5, 13.5));
        EstimatorBlock block = Assert.Single(Add(intake, R(1 + gap, 3e5, weight) with { Cylinder = label }));
        Assert.Equal(isDrawing, block.IsDrawing);
    }

    /// <summary>Weights of a second in which another cylinder was labelled are those of the new one alone.</summary>
    [Fact]
    public void Weights_of_two_cylinders_are_not_averaged()
    {
        ReadingIntake intake = Intake();
        Add(intake, R(0, 3e5, 13.5), R(1, 3e5, 13.5), R(1.4, 3e5, 13.5), R(2, 3e5, 20) with { Cylinder = 1 });
        Assert.Equal(20, intake.Scale.Gross, 1e-9);
        Assert.Equal(1, intake.Scale.Cylinder);
        Add(intake, R(2.5, 3e5, 20.02) with { Cylinder = 1 }, R(3, 3e5, 20.04) with { Cylinder = 1 });
        Assert.Equal(20.03, intake.Scale.Gross, 1e-9);
    }

    [Fact]
    public void A_machine_that_is_off_or_shut_off_draws_nothing()
    {
        ReadingIntake intake = Intake();
        List<EstimatorBlock> blocks = Add(intake, R(0, 3e5, 13.5), R(1, 3e5, 13.5) with { IsMachineRunning = false }, R(2, 3e5, 13.5) with { IsValveOpen = false }, R(3, 3e5, 13.5));
        Assert.Equal([true, false, false, true], [blocks[0].IsDrawing, blocks[1].IsDrawing, blocks[2].IsDrawing, blocks[3].IsDrawing]);
        Assert.Equal(3e5, blocks[1].Gauge);
        Assert.True(intake.IsOpen);
        Add(intake, R(4, 3e5, 13.5) with { IsValveOpen = false });
        Assert.False(intake.IsOpen);
    }

    private static ReadingIntake Intake() => new(Bench.Job, Workbench.Typical.Instruments(), Bench.Prior, Bench.Table);

    private static RawReading R(double time, double gauge, double weight) => new(time) { SuctionGaugePressure = gauge, GrossWeight = weight };

    private static List<EstimatorBlock> Add(ReadingIntake intake, params RawReading[] readings)
    {
        var blocks = new List<EstimatorBlock>();
        foreach (RawReading reading in readings)
        {
            if (intake.Add(in reading, out EstimatorBlock block))
            {
                blocks.Add(block);
            }
        }

        return blocks;
    }
}
