using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Time that handling takes on site. The defaults are common practice, no source. Each 0 to 24 h. Immutable.</summary>
public sealed record JobTimes
{
    private const double Day = 86_400;

    /// <summary>For an initializer.</summary>
    public JobTimes()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="hoseChange">See <see cref="HoseChange"/>.</param>
    /// <param name="cylinderChange">See <see cref="CylinderChange"/>.</param>
    /// <param name="close">See <see cref="Close"/>.</param>
    /// <param name="hold">See <see cref="Hold"/>.</param>
    /// <param name="setUp">See <see cref="SetUp"/>.</param>
    /// <param name="oilService">See <see cref="OilService"/>.</param>
    /// <param name="patience">See <see cref="Patience"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public JobTimes(
        Duration? hoseChange = null,
        Duration? cylinderChange = null,
        Duration? close = null,
        Duration? hold = null,
        Duration? setUp = null,
        Duration? oilService = null,
        Duration? patience = null)
    {
        HoseChange = hoseChange ?? HoseChange;
        CylinderChange = cylinderChange ?? CylinderChange;
        Close = close ?? Close;
        Hold = hold ?? Hold;
        SetUp = setUp ?? SetUp;
        OilService = oilService ?? OilService;
        Patience = patience ?? Patience;
    }

    /// <summary>To lock out, connect hoses, set up scale and machine and take the first weight; 5 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration SetUp { get; init => field = Checked(value, nameof(SetUp)); } = new(5, DurationUnit.Minute);

    /// <summary>To change the hoses over from liquid to vapor recovery; 5 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration HoseChange { get; init => field = Checked(value, nameof(HoseChange)); } = new(5, DurationUnit.Minute);

    /// <summary>To close a full cylinder, weigh it and connect the next; 4 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration CylinderChange { get; init => field = Checked(value, nameof(CylinderChange)); } = new(4, DurationUnit.Minute);

    /// <summary>To close valves, weigh and label the last cylinder and disconnect; 5 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Close { get; init => field = Checked(value, nameof(Close)); } = new(5, DurationUnit.Minute);

    /// <summary>How long the appliance stands after a pull while its pressure is watched; 10 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Hold { get; init => field = Checked(value, nameof(Hold)); } = new(10, DurationUnit.Minute);

    /// <summary>To drain or fill one oil of the machine, besides the time that the oil runs; 3 min by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration OilService { get; init => field = Checked(value, nameof(OilService)); } = new(3, DurationUnit.Minute);

    /// <summary>How long a machine that moves next to nothing is left running before a person gives up; 2 h by default. Where no waiting helps (the machine gets no deeper, or nothing leads to the liquid that is left), ten minutes at most.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Patience { get; init => field = Checked(value, nameof(Patience)); } = new(120, DurationUnit.Minute);

    private static Duration Checked(Duration value, string parameter)
    {
        Require.InRange(value.Seconds, 0, Day, "s", parameter);
        return Held.Minutes(value);
    }

    /// <summary>The seven times.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"set-up {SetUp.Seconds:G7} s, hose change {HoseChange.Seconds:G7} s, cylinder change {CylinderChange.Seconds:G7} s, close {Close.Seconds:G7} s, hold {Hold.Seconds:G7} s, oil service {OilService.Seconds:G7} s, patience {Patience.Seconds:G7} s");
}
