using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-290, propane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R290
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-290",
        Name = "propane",
        CasNumber = "74-98-6",
        Source = "Eric W. Lemmon and Mark O. McLinden and Wolfgang Wagner, (2009), Thermodynamic Properties of Propane. "
            + "III. A Reference Equation of State for Temperatures from the Melting Line to 650 K and Pressures up "
            + "to 1000 MPa, J. Chem. Eng. Data, vol. 54, 3141-3180, doi:10.1021/je900217v",
        MolarMass = 0.04409562,
        GasConstant = 8.314472,
        ReducingTemperature = 369.89,
        ReducingMolarDensity = 5000.000000000001,
        CriticalTemperature = 369.89,
        CriticalPressure = 4251200,
        CriticalMolarDensity = 5000.000000000001,
        AcentricFactor = 0.1521,
        MinimumTemperature = 85.525,
        MaximumTemperature = 650,
        MaximumPressure = 1000000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 3.043, 1.062478 },
                { 5.874, 3.344237 },
                { 9.337, 5.363757 },
                { 7.922, 11.762957 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.042910051, 4, 1, 0 },
                { 1.7313671, 1, 0.33, 0 },
                { -2.4516524, 1, 0.8, 0 },
                { 0.34157466, 2, 0.43, 0 },
                { -0.46047898, 2, 0.9, 0 },
                { -0.66847295, 1, 2.46, 1 },
                { 0.20889705, 3, 2.09, 1 },
                { 0.19421381, 6, 0.88, 1 },
                { -0.22917851, 6, 1.09, 1 },
                { -0.60405866, 2, 3.25, 2 },
                { 0.066680654, 3, 4.62, 2 },
            },
            Gaussian = new double[,]
            {
                { 0.017534618, 1, 0.76, 0.963, 2.33, 0.684, 1.283 },
                { 0.33874242, 1, 2.5, 1.977, 3.47, 0.829, 0.6936 },
                { 0.22228777, 1, 2.75, 1.917, 3.15, 1.419, 0.788 },
                { -0.23219062, 2, 3.05, 2.307, 3.19, 0.817, 0.473 },
                { -0.09220694, 2, 2.55, 2.546, 0.92, 1.5, 0.8577 },
                { -0.47575718, 4, 8.4, 3.28, 18.8, 1.426, 0.271 },
                { -0.017486824, 1, 6.75, 14.6, 547.8, 1.093, 0.948 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00028422, 5.5403E-06 },
            { 215.34, 0.00023716, 5.907E-06 },
            { 229.69, 0.00020027, 6.274E-06 },
            { 244.03, 0.00017068, 6.645E-06 },
            { 258.38, 0.00014641, 7.0283E-06 },
            { 272.72, 0.00012615, 7.4346E-06 },
            { 287.07, 0.00010888, 7.8815E-06 },
            { 301.41, 9.3886E-05, 8.3941E-06 },
            { 315.76, 8.0506E-05, 9.0154E-06 },
            { 330.1, 6.8194E-05, 9.8229E-06 },
            { 344.45, 5.6277E-05, 1.0994E-05 },
            { 358.79, 4.3491E-05, 1.3102E-05 },
        },
    };
}
