using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the readings of a job are taken with. Immutable.</summary>
public sealed record Instruments
{
    /// <summary>For an initializer.</summary>
    public Instruments()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="suctionGauge">See <see cref="SuctionGauge"/>.</param>
    /// <param name="scale">See <see cref="Scale"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public Instruments(
        GaugeAccuracy? suctionGauge = null,
        ScaleAccuracy? scale = null)
    {
        SuctionGauge = suctionGauge ?? SuctionGauge;
        Scale = scale ?? Scale;
    }

    /// <summary>The gauge at the machine's inlet; class 1.6 from −100 kPa to 1.6 MPa by default (common practice, no source).</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public GaugeAccuracy SuctionGauge { get; init => field = Require.NotNull(value, nameof(SuctionGauge)); } =
        GaugeAccuracy.FromClass(1.6, new Pressure(-100, PressureUnit.Kilopascal), new Pressure(1600, PressureUnit.Kilopascal));

    /// <summary>The scale under the cylinder; steps of 10 g by default (common practice, no source).</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public ScaleAccuracy Scale { get; init => field = Require.NotNull(value, nameof(Scale)); } = ScaleAccuracy.FromResolution(new Mass(10, MassUnit.Gram));

    /// <summary>Typical ones for a job: a gauge as far off as the default one, whose scale reaches what the refrigerant shows.</summary>
    /// <param name="highest">What it shows at rest, Pa gauge.</param>
    internal static Instruments Typical(double highest)
    {
        var typical = new Instruments();
        double low = typical.SuctionGauge.Low.Pascals;
        double high = Math.Max(typical.SuctionGauge.High.Pascals, highest);
        double accuracyClass = 100 * typical.SuctionGauge.ErrorLimitPascals / (high - low);
        return typical with { SuctionGauge = GaugeAccuracy.FromClass(accuracyClass, typical.SuctionGauge.Low, new Pressure(high, PressureUnit.Pascal)) };
    }

    /// <summary>Gauge and scale.</summary>
    public override string ToString() => $"{SuctionGauge}; {Scale}";
}
