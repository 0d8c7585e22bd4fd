using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>How full a cylinder may be.</summary>
internal static unsafe class CylinderExports
{
    [UnmanagedCallersOnly(EntryPoint = "rr_fill_limit_of")]
    public static Status FillLimitOf(int fluid, Cylinder* cylinder, FillLimitFigures* limit, byte* text, int textSize)
    {
        try
        {
            ref FillLimitFigures result = ref Errors.Deref(limit, nameof(limit));
            FillLimit answer = CylinderFill.Limit(Errors.Deref(cylinder, nameof(cylinder)).Create(), FluidHandles.Get(fluid));
            int cautions = Text.WriteWithCautions(answer.GoverningRule.Name, answer.Findings, text, textSize);
            result = new FillLimitFigures(answer, cautions);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    /// <summary>The header's <c>rr_cylinder</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal readonly struct Cylinder
    {
        private readonly byte* _mark;
        private readonly double _testPressure;
        private readonly double _waterCapacity;
        private readonly double _tareWeight;
        private readonly double _content;
        private readonly byte* _refrigerant;

        public RecoveryCylinder Create()
        {
            var waterCapacity = Mass.FromKilograms(_waterCapacity);
            var tareWeight = Mass.FromKilograms(_tareWeight);
            RecoveryCylinder cylinder = _mark is null
                ? RecoveryCylinder.FromTestPressure(Pressure.FromPascals(_testPressure), waterCapacity, tareWeight)
                : RecoveryCylinder.FromMark(Text.Read(_mark, "mark"), waterCapacity, tareWeight);
            return cylinder with
            {
                Content = Mass.FromKilograms(_content),
                Refrigerant = _refrigerant is null ? null : Text.Read(_refrigerant, "refrigerant"),
            };
        }
    }

    /// <summary>The header's <c>rr_fill_limit</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal readonly struct FillLimitFigures(FillLimit limit, int cautions)
    {
        public readonly double MaximumFill = limit.MaximumFill.Kilograms;
        public readonly double MaximumGrossWeight = limit.MaximumGrossWeight.Kilograms;
        public readonly double Room = limit.Room.Kilograms;
        public readonly int Cautions = cautions;
        public readonly int Reserved = 0;
    }
}
