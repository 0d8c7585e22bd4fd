using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1234ze(E), trans-1,3,3,3-tetrafluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1234zeE
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1234ze(E)",
        Name = "trans-1,3,3,3-tetrafluoropropene",
        CasNumber = "29118-24-9",
        Source = "Monika Thol and Eric W. Lemmon, (2016), Equation of State for the Thermodynamic Properties of "
            + "trans-1,3,3,3-Tetrafluoropropene [R-1234ze(E)], Int. J. Thermophys, vol. 37, 1--16, "
            + "doi:10.1007/s10765-016-2040-6",
        MolarMass = 0.1140415928,
        GasConstant = 8.314472,
        ReducingTemperature = 382.513,
        ReducingMolarDensity = 4290,
        CriticalTemperature = 382.52,
        CriticalPressure = 3635376.3491348797,
        CriticalMolarDensity = 4290,
        AcentricFactor = 0.3131224184598984,
        MinimumTemperature = 168.62,
        MaximumTemperature = 420,
        MaximumPressure = 15000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 9.3575, 1.34113088966911 },
                { 10.717, 5.15538034001459 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.03982797, 4, 1, 0 },
                { 1.812227, 1, 0.223, 0 },
                { -2.537512, 1, 0.755, 0 },
                { -0.5333254, 2, 1.24, 0 },
                { 0.1677031, 3, 0.44, 0 },
                { -1.323801, 1, 2, 2 },
                { -0.6694654, 3, 2.2, 2 },
                { 0.8072718, 2, 1.2, 1 },
                { -0.7740229, 2, 1.5, 2 },
                { -0.01843846, 7, 0.9, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.407916, 1, 1.33, 1, 1.21, 0.943, 0.728 },
                { -0.4237082, 1, 1.75, 1.61, 1.37, 0.642, 0.87 },
                { -0.2270068, 3, 2.11, 1.24, 0.98, 0.59, 0.855 },
                { -0.805213, 3, 1, 9.34, 171, 1.2, 0.79 },
                { 0.00994318, 2, 1.5, 5.78, 47.4, 1.33, 1.3 },
                { -0.008798793, 1, 1, 3.08, 15.4, 0.64, 0.71 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00079057, 8.2319E-06 },
            { 216.46, 0.00058644, 8.8833E-06 },
            { 231.92, 0.00045394, 9.5389E-06 },
            { 247.38, 0.00036127, 1.0198E-05 },
            { 262.83, 0.00029283, 1.0862E-05 },
            { 278.29, 0.0002401, 1.1535E-05 },
            { 293.75, 0.0001982, 1.2229E-05 },
            { 309.21, 0.00016401, 1.2968E-05 },
            { 324.67, 0.00013546, 1.38E-05 },
            { 340.13, 0.00011109, 1.4837E-05 },
            { 355.59, 8.9604E-05, 1.6363E-05 },
            { 371.04, 6.9207E-05, 1.944E-05 },
        },
    };
}
